"""What two lessons or more show and say."""
