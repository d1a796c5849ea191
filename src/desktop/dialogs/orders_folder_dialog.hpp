/// Asks where the order workbooks go.
#pragma once

#include "desktop/dialogs/form.hpp"

namespace sparewell::desktop {

class OrdersFolderDialog : public Form {
 public:
  OrdersFolderDialog(wxWindow* parent, const std::string& folder);
  [[nodiscard]] std::string folder() const;

 private:
  wxDirPickerCtrl* folder_ = nullptr;
};

}  // namespace sparewell::desktop
