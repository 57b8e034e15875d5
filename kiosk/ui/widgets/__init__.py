"""What is drawn: each widget with its look beside it."""
