#include "desktop/pages/patient/parts_pane.hpp"

#include <wx/checkbox.h>
#include <wx/sizer.h>

#include "clinic/say.hpp"
#include "desk/picture/life_picture.hpp"
#include "desktop/chart/chart_view.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/command_row.hpp"
#include "desktop/widgets/layout_memory.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {

PartsPane::PartsPane(wxWindow* parent, Actions actions)
    : wxPanel{parent}, actions_{std::move(actions)}, parts_{desk::part_columns()} {
  // In the order in which the Tab key goes through them.
  with_ended_ = new wxCheckBox{this, wxID_ANY, said("Show parts &no longer in use")};
  with_ended_->Bind(wxEVT_CHECKBOX, [this](wxCommandEvent&) { actions_.show_again(); });
  remember_filter(*with_ended_, "Parts no longer in use");
  chart_ = new ChartView{this, say("Lives of the parts, drawn")};
  chart_->set_least_height(8);
  chart_->when_selected([this](const std::string& id) { view_->select(id); });
  life_ = new WrappedLabel{this};
  trust_ = new WrappedLabel{this};
  view_ = new TableView{this, parts_, said("Parts of the patient")};
  view_->set_least_rows(2);
  view_->set_empty_words(said("No part is recorded as in use."));
  view_->when_selected([this](const std::string& id) { show_part(id); });
  // What is done every day; delivery sheets are in the menu.
  using desk::Command;
  commands_ = new CommandRow{
      this,
      {Command::issue_part, Command::end_part, Command::book_parts, Command::cancel_booking},
      actions_.run};
  const auto inset = wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT, FromDIP(8));
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(with_ended_, wxSizerFlags{}.Right().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(8)));
  sizer->Add(chart_, wxSizerFlags{3}.Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(8)));
  sizer->Add(life_, inset);
  sizer->Add(trust_, wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(8)));
  sizer->Add(view_, wxSizerFlags{2}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(commands_, inset);
  SetSizer(sizer);
  keep_wrapped(*this, {life_, trust_}, FromDIP(20));
}

void PartsPane::show(const desk::DayPtr& day, const desk::PatientCard& card) {
  day_ = day;
  with_ended_->SetLabel(to_wx(say("Show parts &no longer in use ({})", card.ended)));
  with_ended_->Enable(card.ended > 0);
  strips_ = card.strips;
  chart_->show(desk::life_picture(card.strips, card.reference, day->today()));
  parts_.fill(card.parts);
  view_->table_changed();
}

void PartsPane::show_part(const std::string& id) {
  chart_->mark(id);
  life_->set_text("");
  for (const auto& strip : strips_) {
    if (strip.heading.empty() && strip.id == id) life_->set_text(strip.words);
  }
  if (day_) trust_->set_text(desk::trust_of_part(*day_, id, test_));
  Layout();
  actions_.choice_changed();
}

void PartsPane::show_test(const desk::ForecastTestPtr& test) {
  test_ = test;
  show_part(view_->selected());
}

bool PartsPane::with_ended() const {
  return with_ended_->GetValue();
}

void PartsPane::show_ended() {
  with_ended_->SetValue(true);
}

void PartsPane::choose(std::size_t unit) {
  view_->select(std::to_string(unit));
  view_->focus_rows();
}

const Unit* PartsPane::chosen() const {
  const auto& id = view_->selected();
  return !day_ || id.empty() ? nullptr : &day_->clinic().units[std::stoul(id)];
}

void PartsPane::allow_work(const desk::CommandState& state) {
  commands_->allow_work(state);
}

}  // namespace sparewell::desktop
