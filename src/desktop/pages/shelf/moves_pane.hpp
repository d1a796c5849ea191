/// On the page "Shelf": what should go from one branch to another.
#pragma once

#include <functional>
#include <string>

#include <wx/panel.h>

#include "desk/commands.hpp"
#include "desk/restock_rows.hpp"

class wxButton;

namespace sparewell::desktop {

class FindBox;
class TableView;
class WrappedLabel;

class MovesPane : public wxPanel {
 public:
  /// `run` carries a command out; `choice_changed` is called when another move is chosen.
  MovesPane(wxWindow* parent, std::function<void(desk::Command)> run,
            std::function<void()> choice_changed);

  void show(const desk::DayPtr& day);
  void find(const std::string& typed);
  void goes_down_from(FindBox& box);
  /// nullptr when none is.
  [[nodiscard]] const supply::RestockMove* chosen() const;
  [[nodiscard]] const desk::Table& table() const { return moves_; }
  void allow_sending(bool allowed);
  void focus_rows();

 private:
  void show_why();

  std::function<void()> choice_changed_;
  desk::DayPtr day_;
  desk::Table moves_;
  WrappedLabel* summary_ = nullptr;
  TableView* view_ = nullptr;
  WrappedLabel* title_ = nullptr;
  WrappedLabel* why_ = nullptr;
  wxButton* send_ = nullptr;
};

}  // namespace sparewell::desktop
