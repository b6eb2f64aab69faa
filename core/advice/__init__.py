"""What to say and how much of what: findings, doses and refusals as data; the chat words them."""
