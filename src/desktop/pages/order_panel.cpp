#include "desktop/pages/order_panel.hpp"

#include <wx/button.h>
#include <wx/sizer.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desk/wording.hpp"
#include "desktop/pages/order/slider_strip.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/command_button.hpp"
#include "desktop/widgets/find_box.hpp"
#include "desktop/widgets/headings.hpp"
#include "desktop/widgets/split.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {
OrderPanel::OrderPanel(wxWindow* parent, std::function<void(desk::Command)> run,
                       std::function<void(const std::optional<Money>&)> keep_to)
    : Page{parent},
      totals_{page_.totals()},
      needs_{desk::OrderPage::need_columns()},
      compared_{desk::OrderSliders{}.table()} {
  auto* top = make_top(run);
  strip_ = new SliderStrip{this, {[this] { show_otherwise(); }, std::move(keep_to)}};
  split_ = make_split(this);
  // In the order in which the Tab key goes through them.
  above_ = make_lines(split_);
  below_ = make_below(split_);
  split_->SplitHorizontally(above_, below_);
  share_room(*split_, 0.5, "Orders");
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(top, wxSizerFlags{}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(strip_, wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(8)));
  sizer->Add(split_, wxSizerFlags{1}.Expand());
  SetSizer(sizer);
}

wxSizer* OrderPanel::make_top(const std::function<void(desk::Command)>& run) {
  auto* top = new wxBoxSizer{wxHORIZONTAL};
  headline_ = new wxStaticText{this, wxID_ANY, ""};
  headline_->SetFont(headline_->GetFont().Bold().Larger());
  find_ = new FindBox{this, said("Supplier, item or patient"), said("Find an order line"),
                      [this](const std::string& typed) {
                        page_.lines().find(typed);
                        lines_->set_empty_words(page_.empty_words());
                        lines_->table_changed();
                      }};
  held_ = command_button(this, desk::Command::held_back, run, say("Held &back ({})", 0));
  write_ = command_button(this, desk::Command::write_orders, run);
  top->Add(headline_, wxSizerFlags{1}.CentreVertical());
  top->Add(find_, wxSizerFlags{}.CentreVertical().Border(wxRIGHT, FromDIP(8)));
  top->Add(held_, wxSizerFlags{}.CentreVertical().Border(wxRIGHT, FromDIP(8)));
  top->Add(write_, wxSizerFlags{}.CentreVertical());
  return top;
}

wxWindow* OrderPanel::make_lines(wxWindow* parent) {
  auto* panel = new wxPanel{parent};
  lines_ = new TableView{panel, page_.lines(), said("Order lines")};
  lines_->set_empty_words(page_.empty_words());
  lines_->when_selected([this](const std::string& id) { show_line(id); });
  find_->goes_down_to(*lines_);
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(lines_, wxSizerFlags{1}.Expand().Border(wxLEFT | wxRIGHT, FromDIP(8)));
  panel->SetSizer(sizer);
  return panel;
}

wxWindow* OrderPanel::make_below(wxWindow* parent) {
  auto* panel = new wxPanel{parent};
  auto* reason = make_reason(panel);
  needs_view_ = new TableView{panel, needs_, said("Who is expected to need it"), Pick::none};
  needs_view_->set_empty_words(
      said("Nobody in particular: it is for new starts, or for patients whose parts are not "
           "recorded here."));
  totals_view_ = new TableView{panel, totals_, said("Totals by supplier"), Pick::none};
  totals_view_->set_empty_words(said("Nothing is to be ordered."));
  compared_view_ =
      new TableView{panel, compared_, said("Orders by the sliders beside today's"), Pick::none};
  compared_view_->Hide();
  const auto column = [&](wxStaticText* heading, wxWindow* control) {
    auto* sizer = new wxBoxSizer{wxVERTICAL};
    sizer->Add(heading, wxSizerFlags{}.Expand().Border(wxBOTTOM, FromDIP(4)));
    sizer->Add(control, wxSizerFlags{1}.Expand());
    return sizer;
  };
  totals_heading_ = section_heading(panel, said("What the orders come to"));
  auto* totals = column(totals_heading_, totals_view_);
  totals->Add(compared_view_, wxSizerFlags{1}.Expand());
  auto* sizer = new wxBoxSizer{wxHORIZONTAL};
  sizer->Add(reason, wxSizerFlags{4}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(column(section_heading(panel, said("Who needs it")), needs_view_),
             wxSizerFlags{4}.Expand().Border(wxTOP | wxBOTTOM, FromDIP(8)));
  sizer->Add(totals, wxSizerFlags{4}.Expand().Border(wxALL, FromDIP(8)));
  panel->SetSizer(sizer);
  return panel;
}

wxWindow* OrderPanel::make_reason(wxWindow* parent) {
  auto* panel = new wxPanel{parent};
  title_ = new WrappedLabel{panel};
  title_->SetFont(title_->GetFont().Bold());
  when_ = new WrappedLabel{panel};
  why_ = new wxTextCtrl{
      panel, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxTE_MULTILINE | wxTE_READONLY};
  set_accessible_name(*why_, said("Why this line is proposed"));
  why_->SetMinSize({FromDIP(200), 3 * GetCharHeight()});
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  const auto text = wxSizerFlags{}.Expand().Border(wxBOTTOM, FromDIP(4));
  sizer->Add(title_, text);
  sizer->Add(when_, text);
  sizer->Add(why_, wxSizerFlags{1}.Expand());
  panel->SetSizer(sizer);
  keep_wrapped(*panel, {title_, when_}, FromDIP(4));
  return panel;
}

void OrderPanel::show(const desk::DayPtr& day) {
  day_ = day;
  page_.show(day);
  strip_->show(day);
  totals_ = page_.totals();
  headline_->SetLabelText(to_wx(page_.headline()));
  held_->SetLabel(
      to_wx(say("Held &back ({})", desk::number_words(static_cast<long long>(page_.held_back())))));
  lines_->set_empty_words(page_.empty_words());
  lines_->table_changed();
  totals_view_->table_changed();
  show_below(page_.anything());
  show_otherwise();
  Layout();
}

void OrderPanel::show_otherwise() {
  const auto& decided = strip_->sliders().decided();
  page_.show_otherwise(decided);
  lines_->table_changed();
  compared_ = strip_->sliders().table();
  compared_view_->table_changed();
  const bool beside = decided != nullptr;
  if (beside != compared_view_->IsShown()) {
    compared_view_->Show(beside);
    totals_view_->Show(!beside);
    totals_heading_->SetLabelText(to_wx(beside ? said("By the sliders, beside today's orders")
                                               : said("What the orders come to")));
    totals_heading_->GetParent()->Layout();
  }
  show_below(beside || page_.anything());
}

void OrderPanel::show_below(bool any) {
  if (any == split_->IsSplit()) return;
  if (any) {
    split_->SplitHorizontally(above_, below_);
    split_->SendSizeEvent();
  } else {
    split_->Unsplit(below_);
  }
}

void OrderPanel::show_line(const std::string& id) {
  const auto detail = page_.detail(id);
  title_->set_text(detail.title);
  when_->set_text(detail.when);
  why_->ChangeValue(to_wx(detail.why));
  needs_.fill(detail.needs);
  needs_view_->table_changed();
  title_->GetParent()->Layout();
}

void OrderPanel::choose(const ItemCode& item) {
  find_->Clear();
  lines_->select(page_.line_of(item));
  lines_->focus_rows();
}

void OrderPanel::find() {
  find_->take_focus();
}

std::string OrderPanel::tab() const {
  const auto count = page_.today_count();
  return count == 0 ? std::string{said("Order today")} : say("Order today ({})", count);
}

void OrderPanel::allow_budget(bool allowed) {
  strip_->allow_budget(allowed);
}

void OrderPanel::allow_writing(bool allowed) {
  write_->Enable(allowed);
}

}  // namespace sparewell::desktop
