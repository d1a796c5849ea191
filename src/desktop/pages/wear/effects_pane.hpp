/// On the page "Wear": how usage changes the life of parts.
#pragma once

#include <wx/panel.h>

#include "desk/wear_page.hpp"

namespace sparewell::desktop {

class TableView;

class EffectsPane : public wxPanel {
 public:
  /// `page` must outlive the pane.
  EffectsPane(wxWindow* parent, desk::WearPage& page);
  /// After the page was given another day or another kind was chosen.
  void changed();

 private:
  TableView* effects_ = nullptr;
};

}  // namespace sparewell::desktop
