"""What the book makes from the declarations and the tables when it is built."""
