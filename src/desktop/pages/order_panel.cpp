#include "desktop/pages/order_panel.hpp"

#include <wx/button.h>
#include <wx/sizer.h>
#include <wx/splitter.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include "desk/commands.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/find_box.hpp"
#include "desktop/widgets/headings.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {
namespace {

std::string joined(const std::vector<std::string>& facts) {
  std::string text;
  for (const auto& fact : facts) text += (text.empty() ? "" : "  \u00b7  ") + fact;
  return text;
}

}  // namespace

OrderPanel::OrderPanel(wxWindow* parent, std::function<void()> write)
    : Page{parent}, totals_{page_.totals()}, needs_{desk::OrderPage::need_columns()} {
  auto* split = new wxSplitterWindow{this, wxID_ANY, wxDefaultPosition, wxDefaultSize,
                                     wxSP_LIVE_UPDATE | wxSP_NOBORDER};
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(make_top(std::move(write)), wxSizerFlags{}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(split, wxSizerFlags{1}.Expand());
  split->SplitVertically(make_lines(split), make_reason(split));
  split->SetSashGravity(0.62);
  split->SetMinimumPaneSize(FromDIP(280));
  SetSizer(sizer);
}

wxSizer* OrderPanel::make_top(std::function<void()> write) {
  auto* top = new wxBoxSizer{wxHORIZONTAL};
  headline_ = new wxStaticText{this, wxID_ANY, ""};
  headline_->SetFont(headline_->GetFont().Bold().Larger());
  find_ = new FindBox{this, "Supplier, item or patient", "Find an order line",
                      [this](const std::string& typed) {
                        page_.lines().find(typed);
                        lines_->set_empty_words(page_.empty_words());
                        lines_->table_changed();
                      }};
  const auto& spec = desk::command_spec(desk::Command::write_orders);
  write_ = new wxButton{this, wxID_ANY, to_wx(spec.label)};
  write_->SetToolTip(to_wx(std::string{spec.help} + " (" + std::string{spec.key} + ")"));
  write_->Bind(wxEVT_BUTTON, [write = std::move(write)](wxCommandEvent&) { write(); });
  top->Add(headline_, wxSizerFlags{1}.CentreVertical());
  top->Add(find_, wxSizerFlags{}.CentreVertical().Border(wxRIGHT, FromDIP(8)));
  top->Add(write_, wxSizerFlags{}.CentreVertical());
  return top;
}

wxWindow* OrderPanel::make_lines(wxWindow* parent) {
  auto* panel = new wxPanel{parent};
  lines_ = new TableView{panel, page_.lines(), "Order lines"};
  lines_->set_empty_words(page_.empty_words());
  lines_->when_selected([this](const std::string& id) { show_line(id); });
  find_->goes_down_to(*lines_);
  totals_view_ = new TableView{panel, totals_, "Totals by supplier"};
  totals_view_->set_least_rows(4);
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(lines_, wxSizerFlags{3}.Expand().Border(wxLEFT | wxRIGHT, FromDIP(8)));
  sizer->Add(section_heading(panel, "What it comes to"),
             wxSizerFlags{}.Border(wxLEFT | wxTOP, FromDIP(8)));
  sizer->Add(totals_view_, wxSizerFlags{1}.Expand().Border(wxALL, FromDIP(8)));
  panel->SetSizer(sizer);
  return panel;
}

wxWindow* OrderPanel::make_reason(wxWindow* parent) {
  auto* panel = new wxPanel{parent};
  title_ = new WrappedLabel{panel};
  title_->SetFont(title_->GetFont().Bold());
  when_ = new WrappedLabel{panel};
  facts_ = new WrappedLabel{panel};
  why_ = new wxTextCtrl{
      panel, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxTE_MULTILINE | wxTE_READONLY};
  set_accessible_name(*why_, "Why this line is proposed");
  needs_view_ = new TableView{panel, needs_, "Who is expected to need it"};
  needs_view_->set_empty_words(
      "Nobody in particular: it is for new starts, or for patients whose "
      "parts are not recorded here.");
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  const auto text = wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(8));
  sizer->Add(title_, text);
  sizer->Add(when_, text);
  sizer->Add(facts_, text);
  sizer->Add(section_heading(panel, "Why"), wxSizerFlags{}.Border(wxLEFT, FromDIP(8)));
  sizer->Add(why_, wxSizerFlags{2}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(section_heading(panel, "Who needs it"), wxSizerFlags{}.Border(wxLEFT, FromDIP(8)));
  sizer->Add(needs_view_, wxSizerFlags{3}.Expand().Border(wxALL, FromDIP(8)));
  panel->SetSizer(sizer);
  keep_wrapped(*panel, {title_, when_, facts_}, FromDIP(20));
  return panel;
}

void OrderPanel::show(const desk::DayPtr& day) {
  page_.show(day);
  totals_ = page_.totals();
  headline_->SetLabelText(to_wx(page_.headline()));
  lines_->set_empty_words(page_.empty_words());
  lines_->table_changed();
  totals_view_->set_empty_words("Nothing is to be ordered.");
  totals_view_->table_changed();
  show_line(lines_->selected());
  Layout();
}

void OrderPanel::show_line(const std::string& id) {
  const auto detail = page_.detail(id);
  title_->set_text(detail.title);
  when_->set_text(detail.when);
  facts_->set_text(joined(detail.facts));
  why_->ChangeValue(to_wx(detail.why));
  needs_.fill(detail.needs);
  needs_view_->table_changed();
  title_->GetParent()->Layout();
}

void OrderPanel::find() {
  find_->take_focus();
}

std::string OrderPanel::tab() const {
  const auto count = page_.lines().total();
  return count == 0 ? "Order today" : "Order today (" + std::to_string(count) + ")";
}

void OrderPanel::allow_writing(bool allowed) {
  write_->Enable(allowed);
}

}  // namespace sparewell::desktop
