#include "desktop/pages/patient_panel.hpp"

#include <fmt/format.h>
#include <wx/button.h>
#include <wx/checkbox.h>
#include <wx/sizer.h>
#include <wx/stattext.h>

#include "desktop/text.hpp"
#include "desktop/widgets/find_box.hpp"
#include "desktop/widgets/headings.hpp"
#include "desktop/widgets/life_chart.hpp"
#include "desktop/widgets/scroll_to_focus.hpp"
#include "desktop/widgets/split.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {
namespace {

std::string lines_of(const std::vector<std::string>& lines) {
  std::string text;
  for (const auto& line : lines) text += (text.empty() ? "" : "\n") + line;
  return text;
}

}  // namespace

PatientPanel::PatientPanel(wxWindow* parent, std::function<void(desk::Command)> run,
                           std::function<void()> choice_changed)
    : Page{parent},
      run_{std::move(run)},
      choice_changed_{std::move(choice_changed)},
      parts_{desk::part_columns()} {
  auto* split = make_split(this);
  // In the order in which the Tab key goes through them.
  auto* list = make_list(split);
  auto* card = make_card(split);
  split->SplitVertically(list, card);
  share_room(*split, 0.37);
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(split, wxSizerFlags{1}.Expand());
  SetSizer(sizer);
}

wxWindow* PatientPanel::make_list(wxWindow* parent) {
  auto* panel = new wxPanel{parent};
  find_ = new FindBox{panel, "Reference, name, branch, item, serial or lot", "Find a patient",
                      [this](const std::string& typed) {
                        list_.table().find(typed);
                        list_changed();
                      }};
  only_with_parts_ = new wxCheckBox{panel, wxID_ANY, "Only those with parts in &use"};
  only_with_parts_->SetToolTip("Leave out patients who have no part in use today");
  only_with_parts_->Bind(wxEVT_CHECKBOX, [this](wxCommandEvent& event) {
    list_.table().require(event.IsChecked() ? desk::PatientList::has_parts : 0);
    list_changed();
  });
  count_ = new wxStaticText{panel, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxALIGN_RIGHT};
  list_view_ = new TableView{panel, list_.table(), "Patients"};
  list_view_->set_empty_words(list_.empty_words());
  list_view_->when_selected([this](const std::string& ref) { show_patient(ref); });
  find_->goes_down_to(*list_view_);
  auto* row = new wxBoxSizer{wxHORIZONTAL};
  row->Add(only_with_parts_, wxSizerFlags{1}.CentreVertical());
  row->Add(count_, wxSizerFlags{}.CentreVertical());
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(find_, wxSizerFlags{}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(row, wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(8)));
  sizer->Add(list_view_, wxSizerFlags{1}.Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(8)));
  panel->SetSizer(sizer);
  return panel;
}

wxSizer* PatientPanel::make_text(wxWindow* card) {
  title_ = new WrappedLabel{card};
  title_->SetFont(title_->GetFont().Bold().Larger());
  facts_ = new WrappedLabel{card};
  sensitivities_ = new WrappedLabel{card};
  caution_ = new WrappedLabel{card, desk::care_caution()};
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(title_, wxSizerFlags{}.Expand().Border(wxTOP, FromDIP(8)));
  sizer->Add(facts_, wxSizerFlags{}.Expand().Border(wxTOP, FromDIP(4)));
  sizer->Add(section_heading(card, "Sensitivities"), wxSizerFlags{}.Border(wxTOP, FromDIP(8)));
  sizer->Add(sensitivities_, wxSizerFlags{}.Expand().Border(wxTOP, FromDIP(2)));
  sizer->Add(caution_, wxSizerFlags{}.Expand().Border(wxTOP, FromDIP(2)));
  return sizer;
}

wxWindow* PatientPanel::make_card(wxWindow* parent) {
  card_ = new wxScrolledWindow{parent};
  // Large text or a small window: the card scrolls as a whole.
  card_->SetScrollRate(0, FromDIP(10));
  scroll_to_focus(*card_);
  auto* text = make_text(card_);
  with_ended_ = new wxCheckBox{card_, wxID_ANY, "Show parts &no longer in use"};
  with_ended_->Bind(wxEVT_CHECKBOX,
                    [this](wxCommandEvent&) { show_patient(list_view_->selected()); });
  chart_ = new LifeChart{card_};
  chart_->SetMinSize({FromDIP(200), 6 * (GetCharHeight() + FromDIP(8))});
  chart_->when_selected([this](const std::string& id) { parts_view_->select(id); });
  life_ = new WrappedLabel{card_};
  trust_ = new WrappedLabel{card_};
  parts_view_ = new TableView{card_, parts_, "Parts of the patient"};
  parts_view_->set_empty_words("No part is recorded as in use.");
  parts_view_->when_selected([this](const std::string& id) { show_part(id); });
  auto* row = new wxBoxSizer{wxHORIZONTAL};
  row->Add(section_heading(card_, "Parts"), wxSizerFlags{1}.CentreVertical());
  row->Add(with_ended_, wxSizerFlags{}.CentreVertical());
  const auto inset = wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT, FromDIP(8));
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(text, inset);
  sizer->Add(row, wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(8)));
  sizer->Add(chart_, wxSizerFlags{3}.Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(8)));
  sizer->Add(new LifeLegend{card_}, inset);
  sizer->Add(life_, inset);
  sizer->Add(trust_, wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(8)));
  sizer->Add(parts_view_, wxSizerFlags{2}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(make_buttons(), wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT, FromDIP(8)));
  card_->SetSizer(sizer);
  keep_wrapped(*card_, {title_, facts_, sensitivities_, caution_, life_, trust_}, FromDIP(20));
  return card_;
}

void PatientPanel::list_changed() {
  list_view_->set_empty_words(list_.empty_words());
  list_view_->table_changed();
  count_->SetLabelText(to_wx(list_.count_shown()));
  count_->GetParent()->Layout();
}

void PatientPanel::show(const desk::DayPtr& day) {
  day_ = day;
  list_.show(day);
  list_changed();
}

void PatientPanel::lay_out_card() {
  card_->FitInside();
  card_->Layout();
}

void PatientPanel::show_part(const std::string& id) {
  chart_->mark(id);
  life_->set_text("");
  for (const auto& strip : strips_) {
    if (strip.heading.empty() && strip.id == id) life_->set_text(strip.words);
  }
  trust_->set_text(desk::trust_of_part(*day_, id, test_));
  lay_out_card();
  choice_changed_();
}

void PatientPanel::show_patient(const std::string& ref) {
  if (!day_) return;
  const auto card = desk::patient_card(*day_, {ref}, with_ended_->GetValue());
  title_->set_text(card.title);
  auto facts = card.prostheses;
  facts.insert(facts.begin(), card.bookings.begin(), card.bookings.end());
  facts.insert(facts.begin(), card.visit);
  facts.push_back("Use: " + card.usage);
  facts_->set_text(ref.empty() ? std::string{} : lines_of(facts));
  sensitivities_->set_text(lines_of(card.sensitivities));
  sensitivities_->SetFont(card.sensitive ? GetFont().Bold() : GetFont());
  with_ended_->SetLabel(wxString::Format("Show parts &no longer in use (%d)", card.ended));
  with_ended_->Enable(card.ended > 0);
  has_bookings_ = !card.bookings.empty();
  strips_ = card.strips;
  chart_->show(card.strips, day_->today());
  parts_.fill(card.parts);
  parts_view_->table_changed();
  card_->Show(!ref.empty());
  lay_out_card();
}

wxSizer* PatientPanel::make_buttons() {
  // What is done every day and fits into one row of a narrow pane; delivery sheets are in the menu.
  auto* sizer = new wxBoxSizer{wxHORIZONTAL};
  const auto add = [&](desk::Command command) {
    const auto& spec = desk::command_spec(command);
    auto* button = new wxButton{card_, wxID_ANY, to_wx(spec.label)};
    button->SetToolTip(to_wx(fmt::format("{} ({})", spec.help, spec.key)));
    button->Bind(wxEVT_BUTTON, [this, command](wxCommandEvent&) { run_(command); });
    sizer->Add(button, wxSizerFlags{}.Border(wxRIGHT | wxBOTTOM, FromDIP(8)));
    return button;
  };
  issue_ = add(desk::Command::issue_part);
  end_ = add(desk::Command::end_part);
  book_ = add(desk::Command::book_parts);
  cancel_ = add(desk::Command::cancel_booking);
  return sizer;
}

std::string PatientPanel::chosen_patient() const {
  return list_view_->selected();
}

const Unit* PatientPanel::chosen_part() const {
  const auto& id = parts_view_->selected();
  return !day_ || id.empty() ? nullptr : &day_->clinic().units[std::stoul(id)];
}

const Unit* PatientPanel::chosen_unit() const {
  const auto* unit = chosen_part();
  return unit != nullptr && unit->in_use_on(day_->today()) ? unit : nullptr;
}

void PatientPanel::allow_work(const desk::CommandState& state) {
  issue_->Enable(desk::command_spec(desk::Command::issue_part).enabled(state));
  end_->Enable(desk::command_spec(desk::Command::end_part).enabled(state));
  book_->Enable(desk::command_spec(desk::Command::book_parts).enabled(state));
  cancel_->Enable(desk::command_spec(desk::Command::cancel_booking).enabled(state));
}

void PatientPanel::choose(const PatientRef& patient, std::size_t unit) {
  find_->Clear();
  only_with_parts_->SetValue(false);
  list_.table().require(0);
  list_changed();
  list_view_->select(patient.text);
  with_ended_->SetValue(true);
  show_patient(patient.text);
  parts_view_->select(std::to_string(unit));
  parts_view_->focus_rows();
}

void PatientPanel::show_test(const desk::ForecastTestPtr& test) {
  test_ = test;
  show_part(parts_view_->selected());
}

void PatientPanel::find() {
  find_->take_focus();
}

}  // namespace sparewell::desktop
