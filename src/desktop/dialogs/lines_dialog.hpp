/// Lines to be read, and nothing to be decided.
#pragma once

#include <string>
#include <vector>

#include "desktop/dialogs/form.hpp"

namespace sparewell::desktop {

class LinesDialog : public Form {
 public:
  LinesDialog(wxWindow* parent, const std::string& title, const std::string& intro,
              const std::vector<std::string>& lines);
};

}  // namespace sparewell::desktop
