#include "desk/patient_paper_rows.hpp"

#include <algorithm>

#include "billing/papers.hpp"
#include "clinic/say.hpp"
#include "desk/billing/paper_noting.hpp"
#include "desk/part_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

std::string noted_words(const Clinic& clinic, const Unit& unit) {
  std::vector<std::string> noted;
  for (const PartPaper& paper : clinic.part_papers) {
    if (paper.is_of(unit)) {
      noted.push_back(say("{0} of {1}", shown_paper(paper.paper), date_words(paper.dated_on)));
    }
  }
  return noted.empty() ? std::string{said("none")} : list_words(noted);
}

std::string not_noted_words(const billing::PaperFiles& files, const Unit& unit) {
  std::vector<std::string> lacking;
  for (const auto& paper : usual_papers()) {
    if (!files.has(unit, paper)) lacking.push_back(shown_paper(paper));
  }
  return lacking.empty() ? std::string{said("none")} : list_words(lacking);
}

std::string sheet_words(const Handover* handover) {
  if (handover == nullptr || !handover->printed_on) return said("none written here");
  return say("written {}", date_words(*handover->printed_on));
}

bool is_signed(const Handover* handover) {
  return handover != nullptr && handover->signed_on;
}

std::string proof_words(const Handover* handover) {
  return is_signed(handover) ? say("signed {}", date_words(*handover->signed_on))
                             : std::string{said("no signed sheet")};
}

}  // namespace

std::vector<Column> paper_columns() {
  return {{said("Issued"), 13, Align::left, ""},
          {said("Side"), 6, Align::left, ""},
          {said("Item"), 12, Align::left, ""},
          {said("Papers noted"), 20, Align::left, "", 1},
          {said("Not noted"), 26, Align::left, said("Of the papers that payers ask for"), 1},
          {said("Delivery sheet"), 16, Align::left, ""},
          {said("Proof of delivery"), 17, Align::left, ""}};
}

std::vector<TableRow> paper_rows(const Day& day, const PatientRef& patient) {
  const Clinic& clinic = day.clinic();
  const billing::PaperFiles files{clinic};
  auto units = day.units_of(patient);
  std::ranges::stable_sort(units, std::ranges::greater{},
                           [&](std::size_t position) { return clinic.units[position].issued_on; });
  std::vector<TableRow> rows;
  for (const auto position : units) {
    const Unit& unit = clinic.units[position];
    const auto* handover = files.handover_of(unit);
    TableRow row;
    row.id = std::to_string(position);
    row.cells = {date_cell(unit.issued_on, ""),
                 {shown_word(unit.side), std::nullopt},
                 {unit.item.text, std::nullopt},
                 {noted_words(clinic, unit), std::nullopt},
                 {not_noted_words(files, unit), std::nullopt},
                 {sheet_words(handover), std::nullopt},
                 {proof_words(handover), std::nullopt}};
    rows.push_back(std::move(row));
  }
  return rows;
}

std::string papers_summary(const Day& day, const PatientRef& patient) {
  const billing::PaperFiles files{day.clinic()};
  unsigned long without = 0;
  for (const auto position : day.units_of(patient)) {
    if (!is_signed(files.handover_of(day.clinic().units[position]))) ++without;
  }
  const auto proof =
      without == 0 ? std::string{said("Every part has a signed delivery sheet on record.")}
                   : say_n("{} part has no signed delivery sheet on record.",
                           "{} parts have no signed delivery sheet on record.", without, without);
  return fmt::format("{} {}", proof,
                     said("Which papers the patient's payer asks for is on the page \"Billing\"."));
}

}  // namespace sparewell::desk
