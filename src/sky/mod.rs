//! Where the light comes from. Knows Earth, instants and directions; knows nothing of rooms or wishes.
