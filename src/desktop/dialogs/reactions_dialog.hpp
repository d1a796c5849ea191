/// A patient's skin reactions beside what was worn, and what they speak for.
#pragma once

#include "desk/reaction_form.hpp"
#include "desktop/dialogs/form.hpp"

namespace sparewell::desktop {

class ReactionsDialog : public Form {
 public:
  ReactionsDialog(wxWindow* parent, const desk::ReactionsView& view);
};

}  // namespace sparewell::desktop
