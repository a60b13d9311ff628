"""What can be done from anywhere in the round: go, note, person, time, vet, lock."""
