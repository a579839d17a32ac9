"""What is odd in what ``sound.yml`` says."""
