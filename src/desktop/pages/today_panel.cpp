#include "desktop/pages/today_panel.hpp"

#include <wx/button.h>
#include <wx/choice.h>
#include <wx/sizer.h>
#include <wx/stattext.h>

#include "clinic/say.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/find_box.hpp"
#include "desktop/widgets/split.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {

TodayPanel::TodayPanel(wxWindow* parent, std::function<void(const desk::Destination&)> go)
    : Page{parent}, go_{std::move(go)} {
  headline_ = new WrappedLabel{this};
  headline_->SetFont(headline_->GetFont().Bold().Larger());
  auto* top = make_top();
  auto* split = make_split(this);
  // In the order in which the Tab key goes through them.
  auto* list = make_list(split);
  auto* detail = make_detail(split);
  split->SplitHorizontally(list, detail);
  share_room(*split, 0.72, "Today");
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(headline_, wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(8)));
  sizer->Add(top, wxSizerFlags{}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(split, wxSizerFlags{1}.Expand());
  SetSizer(sizer);
  keep_wrapped(*this, {headline_}, FromDIP(20));
}

wxSizer* TodayPanel::make_top() {
  find_ = new FindBox{this, said("Patient, supplier, order or item"),
                      said("Find what needs a person"), [this](const std::string& typed) {
                        page_.table().find(typed);
                        list_->table_changed();
                      }};
  auto* label = new wxStaticText{this, wxID_ANY, to_wx(said("&Job:"))};
  work_ = new wxChoice{this, wxID_ANY};
  for (const auto& choice : desk::TodayPage::work_choices()) work_->Append(to_wx(choice));
  work_->SetSelection(0);
  set_accessible_name(*work_, said("Which job is shown"));
  work_->Bind(wxEVT_CHOICE, [this](wxCommandEvent&) {
    const int chosen = work_->GetSelection();
    page_.show_only(chosen > 0 ? std::optional{static_cast<desk::Work>(chosen - 1)} : std::nullopt);
    list_->table_changed();
  });
  auto* top = new wxBoxSizer{wxHORIZONTAL};
  top->Add(find_, wxSizerFlags{}.CentreVertical().Border(wxRIGHT, FromDIP(12)));
  top->Add(label, wxSizerFlags{}.CentreVertical().Border(wxRIGHT, FromDIP(8)));
  top->Add(work_, wxSizerFlags{}.CentreVertical());
  return top;
}

wxWindow* TodayPanel::make_list(wxWindow* parent) {
  auto* panel = new wxPanel{parent};
  list_ = new TableView{panel, page_.table(), said("What needs a person today")};
  list_->set_empty_words(page_.empty_words());
  list_->when_selected([this](const std::string& id) { show_row(id); });
  list_->when_chosen([this](const std::string&) { go_to_chosen(); });
  find_->goes_down_to(*list_);
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(list_, wxSizerFlags{1}.Expand().Border(wxLEFT | wxRIGHT, FromDIP(8)));
  panel->SetSizer(sizer);
  return panel;
}

wxWindow* TodayPanel::make_detail(wxWindow* parent) {
  auto* panel = new wxPanel{parent};
  title_ = new WrappedLabel{panel};
  title_->SetFont(title_->GetFont().Bold());
  sentence_ = new WrappedLabel{panel};
  help_ = new WrappedLabel{panel};
  act_ = new wxButton{panel, wxID_ANY, to_wx(said("Go there"))};
  act_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { go_to_chosen(); });
  const auto inset = wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(8));
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(title_, inset);
  sizer->Add(sentence_, inset);
  sizer->Add(act_, wxSizerFlags{}.Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(8)));
  sizer->Add(help_, inset);
  panel->SetSizer(sizer);
  keep_wrapped(*panel, {title_, sentence_, help_}, FromDIP(20));
  return panel;
}

void TodayPanel::show(const desk::DayPtr& day) {
  day_ = day;
}

void TodayPanel::show_work(const desk::TodayWorkPtr& work) {
  page_.show(day_, work);
  rows_changed();
}

void TodayPanel::show_books(desk::TodayPage::Books books, const desk::WorklistPtr& items) {
  page_.show_books(books, items);
  rows_changed();
}

void TodayPanel::rows_changed() {
  headline_->set_text(page_.headline());
  list_->set_empty_words(page_.empty_words());
  list_->table_changed();
  Layout();
}

void TodayPanel::show_row(const std::string& id) {
  const auto detail = page_.detail(id);
  title_->set_text(detail.title);
  sentence_->set_text(detail.sentence);
  help_->set_text(detail.help);
  act_->SetLabel(to_wx(detail.action));
  act_->Show(!detail.action.empty());
  title_->GetParent()->Layout();
}

void TodayPanel::go_to_chosen() {
  if (const auto destination = page_.destination(list_->selected())) go_(*destination);
}

void TodayPanel::find() {
  find_->take_focus();
}

void TodayPanel::focus_rows() {
  list_->focus_rows();
}

std::string TodayPanel::tab() const {
  const int count = page_.count();
  return count == 0 ? std::string{said("Today")} : say("Today ({})", count);
}

}  // namespace sparewell::desktop
