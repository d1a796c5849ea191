#include "desktop/dialogs/help_window.hpp"

#include <utility>

#include <wx/display.h>
#include <wx/panel.h>
#include <wx/sizer.h>
#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desk/help_pictures.hpp"
#include "desktop/chart/chart_view.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/find_box.hpp"
#include "desktop/widgets/split.hpp"
#include "desktop/widgets/table_view.hpp"

namespace sparewell::desktop {

HelpWindow::HelpWindow(wxWindow* parent)
    : wxFrame{parent,
              wxID_ANY,
              to_wx(say("Help")),
              wxDefaultPosition,
              wxDefaultSize,
              wxDEFAULT_FRAME_STYLE | wxFRAME_FLOAT_ON_PARENT},
      table_{desk::help_table()} {
  auto* split = make_split(this);
  auto* list = make_list(split);
  split->SplitVertically(list, make_answers(split));
  share_room(*split, 0.42, "Help");
  Bind(wxEVT_CHAR_HOOK, [this](wxKeyEvent& event) {
    if (event.GetKeyCode() == WXK_ESCAPE && find_->GetValue().empty()) {
      Close();
    } else {
      event.Skip();
    }
  });
  // Kept for the next question.
  Bind(wxEVT_CLOSE_WINDOW, [this](wxCloseEvent& event) {
    if (!event.CanVeto()) return event.Skip();
    Hide();
    GetParent()->SetFocus();
  });
  // In large letters it needs more room, as far as the screen has it.
  auto size = FromDIP(wxSize{980, 660});
  size.IncTo({110 * GetCharWidth(), 36 * GetCharHeight()});
  size.DecTo(wxDisplay{this}.GetClientArea().GetSize());
  SetSize(size);
  CentreOnParent();
  list_->table_changed();
}

wxWindow* HelpWindow::make_list(wxWindow* parent) {
  auto* panel = new wxPanel{parent};
  find_ = new FindBox{panel, said("Word of a question or an answer"), said("Find in the help"),
                      [this](const std::string& typed) {
                        table_.find(typed);
                        list_->table_changed();
                      }};
  list_ = new TableView{panel, table_, said("Questions")};
  list_->set_empty_words(said("No question or answer holds all these words."));
  list_->when_selected([this](const std::string& row) { show_entry(row); });
  find_->goes_down_to(*list_);
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(find_, wxSizerFlags{}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(list_, wxSizerFlags{1}.Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(8)));
  panel->SetSizer(sizer);
  return panel;
}

wxWindow* HelpWindow::make_answers(wxWindow* parent) {
  auto* split = make_split(parent);
  picture_ = new ChartView{split, said("Picture of an example")};
  // Plain text and not a drawing of it, so that screen readers read it and it can be copied.
  text_ = new wxTextCtrl{split,
                         wxID_ANY,
                         "",
                         wxDefaultPosition,
                         wxDefaultSize,
                         wxTE_MULTILINE | wxTE_READONLY | wxTE_BESTWRAP | wxTE_RICH2};
  set_accessible_name(*text_, said("Answers"));
  split->SplitHorizontally(picture_, text_);
  share_room(*split, 0.55, "Help picture");
  return split;
}

/// Drawn anew only when the page is another one.
void HelpWindow::show_picture(const std::string& page) {
  if (page == pictured_) return;
  pictured_ = page;
  if (auto make = desk::help_picture(page)) picture_->show(std::move(make));
  picture_->Scroll(0, 0);
}

void HelpWindow::open(const std::string& page) {
  find_->Clear();
  list_->select(desk::help_row_id(page, 0));
  Show();
  Raise();
  list_->focus_rows();
}

void HelpWindow::show_entry(const std::string& row) {
  if (text_ == nullptr || row.empty()) return;
  const auto place = desk::help_place(row);
  show_picture(place.page->id);
  text_->Clear();
  const wxTextAttr plain{wxNullColour, wxNullColour, GetFont()};
  const wxTextAttr strong{wxNullColour, wxNullColour, GetFont().Bold()};
  const auto write = [this](const std::string& words, const wxTextAttr& how) {
    text_->SetDefaultStyle(how);
    text_->AppendText(to_wx(words));
  };
  const auto& entries = place.page->entries;
  long shown = 0;
  write(place.page->title + "\n\n", strong);
  for (std::size_t i = 0; i < entries.size(); ++i) {
    if (i == place.entry && i > 0) shown = text_->GetLastPosition();
    write((i == place.entry ? "\u25b8 " : "") + entries[i].question + "\n", strong);
    write(entries[i].answer + "\n\n", plain);
  }
  text_->SetInsertionPoint(shown);
  text_->ShowPosition(shown);
}

}  // namespace sparewell::desktop
