#include "desktop/widgets/search_bar.hpp"

#include <wx/panel.h>
#include <wx/sizer.h>

#include "clinic/say.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/find_box.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {
namespace {

constexpr int rows_shown = 9;

}  // namespace

SearchBar::SearchBar(wxWindow* parent, std::function<void(const desk::Destination&)> go,
                     std::function<void()> closed)
    : go_{std::move(go)}, closed_{std::move(closed)} {
  field_ = new FindBox{parent, say("Patient, item, lot, serial, order, claim; or scan (F3)"),
                       say("Search everything"), [this](const std::string& text) { typed(text); }};
  results_ = new wxPanel{parent};
  words_ = new WrappedLabel{results_};
  list_ = new TableView{results_, page_.table(), say("Found")};
  list_->set_least_rows(rows_shown);
  list_->when_chosen([this](const std::string& id) {
    if (const auto there = page_.there(id)) go_to(*there);
  });
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(words_, wxSizerFlags{}.Expand());
  sizer->Add(list_, wxSizerFlags{1}.Expand());
  results_->SetSizer(sizer);
  results_->Hide();
  field_->goes_down_to(*list_);
  // Enter is left to the window, which knows whether a scanner sent it.
  field_->Bind(wxEVT_CHAR_HOOK, [this](wxKeyEvent& event) {
    if (event.GetKeyCode() == WXK_ESCAPE) return put_away();
    event.Skip();
  });
  results_->Bind(wxEVT_CHAR_HOOK, [this](wxKeyEvent& event) {
    if (event.GetKeyCode() == WXK_ESCAPE) return put_away();
    event.Skip();
  });
}

wxWindow* SearchBar::field() const {
  return field_;
}

wxWindow* SearchBar::results() const {
  return results_;
}

void SearchBar::show(desk::SearchIndexPtr index) {
  page_.show(std::move(index));
  list_->table_changed();
}

void SearchBar::take_focus() {
  field_->take_focus();
}

void SearchBar::begin_with(char typed) {
  field_->SetFocus();
  field_->SetValue(wxString{typed});
  field_->SetInsertionPointEnd();
}

void SearchBar::scan(const std::string& text) {
  field_->SetFocus();
  field_->SetValue(to_wx(text));
  field_->SetInsertionPointEnd();
  enter();
}

void SearchBar::typed(const std::string& text) {
  page_.type(text);
  list_->table_changed();
  words_->set_text(page_.words());
  list_->Show(page_.table().size() > 0);
  set_accessible_name(*field_, say("Search everything"), page_.words());
  results_->Show(page_.any_typed());
  results_->GetParent()->Layout();
}

void SearchBar::enter() {
  if (const auto there = page_.entered()) return go_to(*there);
  if (page_.table().size() > 0) list_->focus_rows();
}

void SearchBar::go_to(const desk::Destination& there) {
  // Emptied first: the place it leads to takes the focus.
  const auto destination = there;
  field_->Clear();
  go_(destination);
}

void SearchBar::put_away() {
  field_->Clear();
  closed_();
}

}  // namespace sparewell::desktop
