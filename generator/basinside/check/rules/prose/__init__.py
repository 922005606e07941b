"""Rules about sentences: how hard and how long they are, and the words in them."""
