#include "desk/patient_list.hpp"

#include "clinic/say.hpp"
#include "desk/part_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

struct FirstWorn {
  std::optional<Date> date;
  std::string part;
  int in_use = 0;
};

/// The unit in use whose median comes first.
FirstWorn first_worn(const Day& day, const std::vector<std::size_t>& units) {
  FirstWorn first;
  for (const auto position : units) {
    const auto& unit = day.clinic().units[position];
    if (!unit.in_use_on(day.today())) continue;
    ++first.in_use;
    const auto* forecast = day.forecast(position);
    if (!forecast || !forecast->p50) continue;
    if (first.date && *first.date <= *forecast->p50) continue;
    first.date = forecast->p50;
    const auto* item = day.index().item(unit.item);
    first.part = (item ? kind_words(*item) : unit.item.text) + ", " + shown_word(unit.side);
  }
  return first;
}

std::string search_text(const Day& day, const Patient& patient,
                        const std::vector<std::size_t>& units) {
  std::string text = patient.ref.text + " " + full_name(patient) + " " + patient.place;
  for (const auto position : units) {
    const auto& unit = day.clinic().units[position];
    text += " " + unit.item.text + " " + unit.lot + " " + unit.serial;
  }
  return folded(text);
}

TableRow patient_row(const Day& day, const Patient& patient) {
  const auto& units = day.units_of(patient.ref);
  const auto first = first_worn(day, units);
  auto worn =
      date_cell(first.date, first.in_use > 0 ? no_forecast_words(day) : said("no part in use"));
  TableRow row;
  row.id = patient.ref.text;
  row.cells = {{patient.ref.text, std::nullopt},
               {full_name(patient), std::nullopt},
               date_cell(patient.next_visit, said_of("date", "none")),
               std::move(worn),
               {first.part, std::nullopt}};
  row.search = search_text(day, patient, units);
  row.marks = first.in_use > 0 ? PatientList::has_parts : 0;
  return row;
}

}  // namespace

std::vector<TableRow> patient_rows(const Day& day) {
  std::vector<TableRow> rows;
  rows.reserve(day.clinic().patients.size());
  for (const auto& patient : day.clinic().patients) rows.push_back(patient_row(day, patient));
  return rows;
}

PatientList::PatientList()
    : table_{
          {{said("Reference"), 9, Align::left, said("The clinic's own reference for the patient")},
           {said("Name"), 22, Align::left, "", 2},
           {said("Next visit"), 11, Align::left, ""},
           {said("First worn out"), 12, Align::left,
            said("When the first of the parts in use is expected to be worn out (even chance)")},
           {said("Part"), 21, Align::left, said("The part that is expected to be worn out first"),
            1}}} {}

void PatientList::show(const DayPtr& day) {
  show(patient_rows(*day));
}

void PatientList::show(std::vector<TableRow> rows) {
  loaded_ = true;
  table_.fill(std::move(rows));
}

std::string PatientList::count_shown() const {
  const auto total = count_words(static_cast<long long>(table_.total()), "patient", "patients");
  if (table_.size() == table_.total()) return total;
  return say("{} of {}", table_.size(), total);
}

std::string PatientList::empty_words() const {
  if (!loaded_) return said("Open a clinic file to see its patients.");
  if (table_.total() == 0) return said("The clinic file holds no patients yet.");
  return said(
      "No patient answers to what you typed. Reference, name, branch, item, serial and lot "
      "are searched.");
}

}  // namespace sparewell::desk
