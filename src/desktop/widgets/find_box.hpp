/// A find box above a list: says what it finds as one types, Down goes to the list, Esc empties it.
#pragma once

#include <functional>
#include <string>

#include <wx/srchctrl.h>

namespace sparewell::desktop {

class TableView;

class FindBox : public wxSearchCtrl {
 public:
  /// `hint` stands in the empty box; `name` is for screen readers.
  FindBox(wxWindow* parent, const std::string& hint, const std::string& name,
          std::function<void(const std::string&)> typed);
  void goes_down_to(TableView& list);
  void take_focus();
  /// Makes room for the hint, whose size may have changed.
  void measure_again();

 private:
  void on_key(wxKeyEvent& event);

  std::string hint_;
  std::function<void(const std::string&)> typed_;
  TableView* list_ = nullptr;
};

}  // namespace sparewell::desktop
