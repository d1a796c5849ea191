/// A picture in words and figures, for those who do not see it.
#pragma once

#include "desk/picture/picture.hpp"
#include "desk/table.hpp"
#include "desktop/dialogs/form.hpp"

namespace sparewell::desktop {

class PictureTextDialog : public Form {
 public:
  PictureTextDialog(wxWindow* parent, const picture::Picture& picture);

 private:
  desk::Table figures_;
};

}  // namespace sparewell::desktop
