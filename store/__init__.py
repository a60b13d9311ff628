"""What the farm keeps and knows. Knows no screen."""
