"""What a session's author could still say, worked out from what she has written: proposals, each to take or to leave."""
