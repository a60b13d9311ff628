"""How a book comes to its form."""
