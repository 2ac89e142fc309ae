"""What a reading decides, and how sure that is."""
