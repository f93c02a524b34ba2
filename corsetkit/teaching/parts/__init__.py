"""What single lessons say and show: words, sentences, pictures and boards, named after their lesson or their subject."""
