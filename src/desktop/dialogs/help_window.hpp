/// The help: a list of questions to search in, beside a picture and the answers.
#pragma once

#include <string>

#include <wx/frame.h>

#include "desk/help_pages.hpp"

class wxTextCtrl;

namespace sparewell::desktop {

class ChartView;
class FindBox;
class TableView;

/// Stays open beside the work.
class HelpWindow : public wxFrame {
 public:
  explicit HelpWindow(wxWindow* parent);
  /// Goes to the first question of the page of this id.
  void open(const std::string& page);

 private:
  wxWindow* make_list(wxWindow* parent);
  wxWindow* make_answers(wxWindow* parent);
  void show_picture(const std::string& page);
  void show_entry(const std::string& row);

  desk::Table table_;
  FindBox* find_ = nullptr;
  TableView* list_ = nullptr;
  ChartView* picture_ = nullptr;
  std::string pictured_;  ///< id of the page whose picture is shown
  wxTextCtrl* text_ = nullptr;
};

}  // namespace sparewell::desktop
