#include "desk/patient_travel.hpp"

#include <algorithm>

#include "clinic/say.hpp"
#include "desk/part_words.hpp"
#include "desk/travel_form.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

constexpr days example_trip{14};

std::string state_words(const Loan& loan, Date today) {
  if (loan.outstanding() == 0) return said("settled");
  if (loan.overdue_on(today)) return say("{} still out, overdue", loan.outstanding());
  return say("{} still out", loan.outstanding());
}

}  // namespace

std::string travel_outlook(const Day& day, const PatientRef& patient) {
  TravelAnswers answers;
  answers.departure = iso_text(day.today() + days{1});
  answers.back = iso_text(day.today() + days{1} + example_trip);
  answers.wanted = wanted_choices.front();
  for (auto* use : {&answers.activity, &answers.sweating, &answers.impact_sport}) *use = as_usual;
  return fmt::format(
      "{}\n\n{}",
      say("An example: away from {} to {}, with the use that is recorded. Trips are "
          "not kept; check the real one.",
          date_words(day.today() + days{1}), date_words(day.today() + days{1} + example_trip)),
      travel_text(day, patient.text, answers));
}

std::vector<Column> lent_columns() {
  return {{said("Lent"), 12, Align::left, ""},  {said("Until"), 12, Align::left, ""},
          {said("Side"), 6, Align::left, ""},   {said("Item"), 14, Align::left, ""},
          {said("Lot"), 12, Align::left, ""},   {said("Pieces"), 7, Align::right, ""},
          {said("State"), 22, Align::left, ""}, {said("Note"), 24, Align::left, "", 1}};
}

std::vector<TableRow> lent_rows(const Day& day, const PatientRef& patient) {
  std::vector<const Loan*> loans;
  for (const Loan& loan : day.clinic().loans) {
    if (loan.patient == patient) loans.push_back(&loan);
  }
  std::ranges::stable_sort(loans, std::ranges::greater{}, [](const Loan* loan) {
    return std::pair{loan->outstanding() > 0, loan->lent_on};
  });
  std::vector<TableRow> rows;
  for (const Loan* loan : loans) {
    TableRow row;
    row.id = std::to_string(loan->number);
    row.cells = {date_cell(loan->lent_on, ""),
                 date_cell(loan->due_on, ""),
                 {shown_word(loan->side), std::nullopt},
                 {loan->lot.item.text, std::nullopt},
                 {loan->lot.lot, std::nullopt},
                 count_cell(loan->quantity),
                 {state_words(*loan, day.today()), std::nullopt},
                 {loan->note, std::nullopt}};
    row.strong = loan->overdue_on(day.today());
    rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace sparewell::desk
