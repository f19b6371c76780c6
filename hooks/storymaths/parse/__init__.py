"""From files to the model, every value with its line and column."""
