"""The pages of a class: one for its teacher, which is no part of the site, and one for its students on the site."""
