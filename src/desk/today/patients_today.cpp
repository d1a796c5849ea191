#include "desk/today/patients_today.hpp"

#include <algorithm>
#include <span>
#include <tuple>

#include "clinic/say.hpp"
#include "desk/surprise_words.hpp"
#include "desk/today/patient_needs.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

constexpr RowKind patient_kind{
    to_say("Patient"),
    to_say("What the records say of the patient: findings about what is worn, parts past their "
           "use-by date or likely worn out before the visit, parts that should have been ordered, "
           "reactions that last. It supports clinical judgement and does not replace it; what is "
           "not recorded is not found."),
    to_say("Go to the patient")};
constexpr RowKind findings_kind{patient_kind.title, patient_kind.help,
                                to_say("Go to the findings")};
constexpr RowKind more_kind{to_say("More patients"),
                            to_say("The most pressing patients are told above, one a row. The list "
                                   "of everyone's findings has those with findings; the visit "
                                   "sheets have those who come."),
                            to_say("Show everyone's findings")};
constexpr RowKind look_kind{
    to_say("To look at"),
    to_say("Sizes that cannot be told or may not fit, possible conflicts, undeclared constituents, "
           "parts that may not go together. None of it is shown as safe before somebody has "
           "looked."),
    to_say("Show everyone's findings")};
constexpr RowKind early_kind{
    to_say("Early endings"),
    to_say("More parts of the lot or item wore out early than chance brings. Inspect those in use "
           "and on the shelf, and ask the maker. It is no proof of a fault."),
    to_say("Go to the early endings")};

std::string visit_words(const PatientNeeds& needs, Date today) {
  if (!needs.visit) return "";
  if (*needs.visit == today) return say("comes today");
  return say("comes on {}", day_words(*needs.visit));
}

TodayRow patient_row(const Day& day, const PatientNeeds& needs) {
  const auto& first = needs.reasons.front();
  std::string sentence = patient_words(day, needs.patient);
  const auto visit = visit_words(needs, day.today());
  if (!visit.empty()) sentence = fmt::format("{} {}", sentence, visit);
  std::string reasons;
  for (const auto& each : needs.reasons) {
    reasons += fmt::format("{}{}", reasons.empty() ? "" : "; ", each.words);
  }
  auto row = start_row(fmt::format("patient {}", needs.patient.text), Work::patients,
                       needs.urgency(), first.finding ? findings_kind : patient_kind,
                       fmt::format("{}: {}.", sentence, reasons));
  row.destination.to = first.finding ? Destination::To::findings : Destination::To::patient;
  row.destination.patient = needs.patient;
  if (!first.finding) row.destination.unit = first.unit;
  return row;
}

/// The most urgent first, those who come soon before others, those with more reasons first.
auto pressing(const PatientNeeds* needs) {
  return std::tuple{needs->urgency(), needs->visit.value_or(Date::max()),
                    -std::ssize(needs->reasons)};
}

TodayRow more_row(Urgency urgency, std::size_t more) {
  auto row = start_row(fmt::format("more patients {}", static_cast<int>(urgency)), Work::patients,
                       urgency, more_kind,
                       say_n("And {} more patient, less pressing than those above.",
                             "And {} more patients, less pressing than those above.", more, more));
  row.count = static_cast<int>(more);
  row.destination.to = Destination::To::findings;
  return row;
}

TodayRow look_row(int patients, int findings) {
  const auto count = static_cast<unsigned long>(patients);
  auto row = start_row(
      "to look at", Work::patients, Urgency::this_week, look_kind,
      say_n("{0} patient without a visit this week has something that a person has to look at "
            "({1} in all).",
            "{0} patients without a visit this week have something that a person has to look at "
            "({1} in all).",
            count, number_words(patients), number_words(findings)));
  row.count = patients;
  row.destination.to = Destination::To::findings;
  return row;
}

/// Those of one urgency do not push out those of another.
void add_patients(std::vector<TodayRow>& rows, const Day& day,
                  std::span<const PatientNeeds* const> pressed) {
  while (!pressed.empty()) {
    const auto urgency = pressed.front()->urgency();
    const auto alike = static_cast<std::size_t>(std::ranges::count(
        pressed, urgency, [](const PatientNeeds* needs) { return needs->urgency(); }));
    for (const auto* needs : pressed.first(std::min(alike, most_patients))) {
      rows.push_back(patient_row(day, *needs));
    }
    if (alike > most_patients) rows.push_back(more_row(urgency, alike - most_patients));
    pressed = pressed.subspan(alike);
  }
}

void add_early(std::vector<TodayRow>& rows, const std::vector<wear::EarlyEndings>& tested) {
  for (const auto& each : tested) {
    if (!each.flagged) continue;
    auto row = start_row(fmt::format("early {} {}", each.item.text, each.lot), Work::patients,
                         Urgency::today, early_kind, early_endings_words(each));
    row.destination.then = Command::wear_early;
    rows.push_back(std::move(row));
  }
}

}  // namespace

std::vector<TodayRow> patients_today(const Day& day) {
  const auto all = patient_needs(day);
  std::vector<const PatientNeeds*> pressed;
  int patients = 0;
  int findings = 0;
  for (const auto& needs : all) {
    if (!needs.reasons.empty()) pressed.push_back(&needs);
    if (needs.to_look_at > 0) {
      ++patients;
      findings += needs.to_look_at;
    }
  }
  std::ranges::stable_sort(pressed, {}, pressing);
  std::vector<TodayRow> rows;
  add_early(rows, day.surprises().lots);
  add_early(rows, day.surprises().items);
  add_patients(rows, day, pressed);
  if (patients > 0) rows.push_back(look_row(patients, findings));
  return rows;
}

}  // namespace sparewell::desk
