"""What a show asks of people: who is called when, and what is done or kept by when."""
