/// On the page "Plan": how suppliers keep the days that they quote.
#pragma once

#include <functional>
#include <string>

#include <wx/panel.h>

#include "desk/suppliers_page.hpp"

namespace sparewell::desktop {

class TableView;
class WrappedLabel;

class SuppliersPane : public wxPanel {
 public:
  /// `go_to` shows an order on the page "Deliveries".
  SuppliersPane(wxWindow* parent, std::function<void(const desk::SuppliersPage::OrderOf&)> go_to);

  void show(const desk::DayPtr& day);
  void focus_rows();

 private:
  void choose(const std::string& supplier);

  desk::SuppliersPage page_;
  WrappedLabel* summary_ = nullptr;
  TableView* suppliers_ = nullptr;
  WrappedLabel* words_ = nullptr;
  TableView* lines_ = nullptr;
};

}  // namespace sparewell::desktop
