"""When each piece of work is done: what waits for what, who is free, and what dries overnight."""
