"""
Several stages under one roof: what each has for itself stands in ``spaces/``, what all share beside
``house.yml``.

A space is read, computed and laid out as a house of one stage: its own files with what all share.
The packs of all spaces are then joined into one, and a show is judged in each as a whole. What
knows of one stage alone (departments, figures, rules) knows nothing of spaces.
"""
