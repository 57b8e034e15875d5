"""Pages of a round: each shows one thing about it and takes what is pressed there."""
