"""The forms: one file each, with how it opens and what its submission does."""

from typing import Final

from bot.forms import put_right
from bot.forms.form import Form

#: Every form by its name, which is the callback id of its view.
FORMS: Final[dict[str, Form]] = {form.name: form for form in (put_right.FORM,)}
