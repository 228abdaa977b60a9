"""The Web API methods that the stand-in answers, one function each."""
