#include "desktop/pages/patient_panel.hpp"

#include <wx/checkbox.h>
#include <wx/notebook.h>
#include <wx/sizer.h>
#include <wx/stattext.h>

#include "clinic/say.hpp"
#include "desk/card_lines.hpp"
#include "desktop/pages/patient/findings_pane.hpp"
#include "desktop/pages/patient/history_pane.hpp"
#include "desktop/pages/patient/limbs_pane.hpp"
#include "desktop/pages/patient/measurements_pane.hpp"
#include "desktop/pages/patient/papers_pane.hpp"
#include "desktop/pages/patient/parts_pane.hpp"
#include "desktop/pages/patient/reactions_pane.hpp"
#include "desktop/pages/patient/travel_pane.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/find_box.hpp"
#include "desktop/widgets/layout_memory.hpp"
#include "desktop/widgets/pane_book.hpp"
#include "desktop/widgets/scroll_to_focus.hpp"
#include "desktop/widgets/split.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {
PatientPanel::PatientPanel(wxWindow* parent, std::function<void(desk::Command)> run,
                           std::function<void()> choice_changed)
    : Page{parent}, run_{std::move(run)}, choice_changed_{std::move(choice_changed)} {
  auto* split = make_split(this);
  // In the order in which the Tab key goes through them.
  auto* list = make_list(split);
  auto* card = make_card(split);
  split->SplitVertically(list, card);
  share_room(*split, 0.37, "Patients");
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(split, wxSizerFlags{1}.Expand());
  SetSizer(sizer);
}

wxWindow* PatientPanel::make_list(wxWindow* parent) {
  auto* panel = new wxPanel{parent};
  find_ = new FindBox{panel, said("Reference, name, branch, item, serial or lot"),
                      said("Find a patient"), [this](const std::string& typed) {
                        list_.table().find(typed);
                        list_changed();
                      }};
  only_with_parts_ = new wxCheckBox{panel, wxID_ANY, said("Only those with parts in &use")};
  only_with_parts_->SetToolTip(said("Leave out patients who have no part in use today"));
  only_with_parts_->Bind(wxEVT_CHECKBOX, [this](wxCommandEvent& event) {
    list_.table().require(event.IsChecked() ? desk::PatientList::has_parts : 0);
    list_changed();
  });
  remember_filter(*only_with_parts_, "Only patients with parts");
  count_ = new wxStaticText{panel, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxALIGN_RIGHT};
  list_view_ = new TableView{panel, list_.table(), said("Patients")};
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
  for (auto* label : {facts_, sensitivities_, caution_}) {
    sizer->Add(label, wxSizerFlags{}.Expand().Border(wxTOP, FromDIP(2)));
  }
  return sizer;
}

wxWindow* PatientPanel::make_card(wxWindow* parent) {
  card_ = new wxScrolledWindow{parent};
  // Large text or a small window: the card scrolls as a whole.
  card_->SetScrollRate(0, FromDIP(10));
  scroll_to_focus(*card_);
  auto* text = make_text(card_);
  panes_ = new wxNotebook{card_, wxID_ANY};
  set_accessible_name(*panes_, said("The chosen patient"));
  make_panes();
  panes_->Bind(wxEVT_NOTEBOOK_PAGE_CHANGED, [this](wxBookCtrlEvent& event) {
    event.Skip();
    fill_pane_in_sight();
    changed();
  });
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(text, wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT, FromDIP(8)));
  sizer->Add(panes_, wxSizerFlags{1}.Expand().Border(wxALL, FromDIP(8)));
  card_->SetSizer(sizer);
  keep_wrapped(*card_, {title_, facts_, sensitivities_, caution_}, FromDIP(20));
  return card_;
}

void PatientPanel::make_panes() {
  const PaneActions actions{run_, [this] { changed(); }};
  limbs_ = new LimbsPane{room_for_pane(*panes_), actions};
  parts_ = new PartsPane{
      room_for_pane(*panes_),
      {run_, [this] { changed(); }, [this] { show_patient(list_view_->selected()); }}};
  findings_ = new FindingsPane{room_for_pane(*panes_), run_, [this] { changed(); }};
  papers_ = new PapersPane{room_for_pane(*panes_), actions};
  // In the order of Pane.
  const auto add = [this](wxWindow* pane, const char* title) {
    add_pane(*panes_, pane, said(title));
    if (auto* seen = dynamic_cast<PatientPane*>(pane)) when_seen_.push_back(seen);
  };
  add(limbs_, to_say("Limbs"));
  add(parts_, to_say("Parts"));
  add(findings_, to_say("Findings"));
  add(new HistoryPane{room_for_pane(*panes_), actions}, to_say("History"));
  add(new MeasurementsPane{room_for_pane(*panes_), actions}, to_say("Measurements"));
  add(new TravelPane{room_for_pane(*panes_), actions}, to_say("Travel"));
  add(new ReactionsPane{room_for_pane(*panes_), actions}, to_say("Reactions"));
  add(papers_, to_say("Papers"));
}

void PatientPanel::changed() {
  lay_out_card();
  choice_changed_();
}

void PatientPanel::list_changed() {
  list_view_->set_empty_words(list_.empty_words());
  list_view_->table_changed();
  count_->SetLabelText(to_wx(list_.count_shown()));
  count_->GetParent()->Layout();
}

void PatientPanel::prepare(const desk::DayPtr& day, std::vector<desk::TableRow> rows) {
  prepared_day_ = day;
  prepared_ = std::move(rows);
}

void PatientPanel::show(const desk::DayPtr& day) {
  day_ = day;
  if (prepared_day_ == day) {
    list_.show(std::move(prepared_));
  } else {
    list_.show(day);
  }
  prepared_day_.reset();
  prepared_.clear();
  list_changed();
}

void PatientPanel::lay_out_card() {
  card_->FitInside();
  card_->Layout();
}

void PatientPanel::show_patient(const std::string& ref) {
  if (!day_) return;
  const auto card = desk::patient_card(*day_, {ref}, parts_->with_ended());
  title_->set_text(card.title);
  facts_->set_text(ref.empty() ? std::string{} : desk::short_facts(card));
  sensitivities_->set_text(ref.empty() ? std::string{} : desk::sensitivity_line(card));
  sensitivities_->SetFont(card.sensitive ? GetFont().Bold() : GetFont());
  has_bookings_ = !card.bookings.empty();
  auto found = ref.empty() ? std::vector<desk::PatientFinding>{}
                           : desk::findings_of(day_->clinic(), {ref}, day_->today());
  panes_->SetPageText(static_cast<std::size_t>(Pane::findings), to_wx(desk::findings_title(found)));
  findings_->show(*day_, found);
  parts_->show(day_, card);
  tell_panes({ref}, std::move(found));
  card_->Show(!ref.empty());
  lay_out_card();
}

void PatientPanel::tell_panes(const PatientRef& patient, std::vector<desk::PatientFinding> found) {
  if (patient.empty()) return;
  const auto chosen =
      std::make_shared<const ChosenPatient>(ChosenPatient{day_, patient, std::move(found)});
  for (auto* pane : when_seen_) pane->about(chosen);
  fill_pane_in_sight();
}

void PatientPanel::fill_pane_in_sight() {
  auto* pane = dynamic_cast<PatientPane*>(pane_in_front(*panes_));
  if (pane != nullptr) pane->come_into_sight();
}

void PatientPanel::open(Pane pane) {
  panes_->SetSelection(static_cast<std::size_t>(pane));
}

bool PatientPanel::shows(Pane pane) const {
  return panes_->GetSelection() == static_cast<int>(pane);
}

const PatientPane* PatientPanel::choosing_pane() const {
  if (shows(Pane::limbs)) return limbs_;
  return shows(Pane::papers) ? papers_ : nullptr;
}

std::string PatientPanel::chosen_patient() const {
  return list_view_->selected();
}

const Unit* PatientPanel::chosen_part() const {
  const auto* pane = choosing_pane();
  if (pane == nullptr) return parts_->chosen();
  const auto unit = chosen_patient().empty() ? std::nullopt : pane->chosen_unit();
  return unit ? &day_->clinic().units.at(*unit) : nullptr;
}

const Unit* PatientPanel::chosen_unit() const {
  const auto* unit = chosen_part();
  return unit != nullptr && unit->in_use_on(day_->today()) ? unit : nullptr;
}

const desk::PatientFinding* PatientPanel::chosen_finding() const {
  return shows(Pane::findings) && !chosen_patient().empty() ? findings_->chosen() : nullptr;
}

std::optional<desk::AlternativesQuestion> PatientPanel::question_of_others() const {
  const auto* missing = shows(Pane::limbs) ? limbs_->chosen_missing() : nullptr;
  if (shows(Pane::findings) || missing != nullptr) {
    const auto* finding = missing != nullptr ? missing : chosen_finding();
    if (finding == nullptr || !finding->side) return std::nullopt;
    return desk::AlternativesQuestion{finding->patient, *finding->side, finding->item,
                                      finding->missing};
  }
  const auto* unit = chosen_unit();
  if (unit == nullptr) return std::nullopt;
  return desk::AlternativesQuestion{unit->patient, unit->side, unit->item, {}};
}

void PatientPanel::allow_work(const desk::CommandState& state) {
  parts_->allow_work(state);
  findings_->allow_work(state);
  for (auto* pane : when_seen_) pane->allow_work(state);
}

void PatientPanel::choose(const PatientRef& patient) {
  find_->Clear();
  only_with_parts_->SetValue(false);
  list_.table().require(0);
  list_changed();
  list_view_->select(patient.text);
  show_patient(patient.text);
}

void PatientPanel::choose(const PatientRef& patient, std::size_t unit) {
  open(Pane::parts);
  parts_->show_ended();
  choose(patient);
  parts_->choose(unit);
}

void PatientPanel::focus_list() {
  list_view_->focus_rows();
}

void PatientPanel::show_findings() {
  open(Pane::findings);
  findings_->focus_rows();
}

void PatientPanel::show_test(const desk::ForecastTestPtr& test) {
  parts_->show_test(test);
}

void PatientPanel::find() {
  find_->take_focus();
}

}  // namespace sparewell::desktop
