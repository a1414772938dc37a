"""A class: many lifters, the hall's gear, a coach or two and one clock."""
