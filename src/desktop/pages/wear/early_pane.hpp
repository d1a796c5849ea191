/// On the page "Wear": lots and items that may be defective, and parts that wore out far too early.
#pragma once

#include <functional>
#include <string>

#include <wx/panel.h>

#include "desk/wear_page.hpp"

class wxButton;
class wxStaticText;

namespace sparewell::desktop {

class FindBox;
class TableView;
class WrappedLabel;

class EarlyPane : public wxPanel {
 public:
  /// `page` must outlive the pane; `go_to` shows a unit, by its position in Clinic::units.
  EarlyPane(wxWindow* parent, desk::WearPage& page, std::function<void(std::size_t)> go_to);

  /// After the page was given another day.
  void day_changed();
  /// After another kind was chosen.
  void kind_changed();
  void find();

 private:
  wxSizer* make_flagged();
  wxSizer* make_row();
  void parts_changed();
  void show_patient(const std::string& id);

  desk::WearPage& page_;
  std::function<void(std::size_t)> go_to_;
  WrappedLabel* summary_ = nullptr;
  TableView* flagged_ = nullptr;
  WrappedLabel* flag_ = nullptr;
  WrappedLabel* count_ = nullptr;
  FindBox* find_ = nullptr;
  wxButton* show_patient_ = nullptr;
  TableView* parts_ = nullptr;
};

}  // namespace sparewell::desktop
