"""What came in, kept until it is answered; one chat in order, chats side by side."""
