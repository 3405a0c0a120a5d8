"""What can be computed: one declaration a working, published values beside them. Pure: no file, no clock."""
