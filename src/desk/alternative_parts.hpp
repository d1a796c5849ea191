/// Which other items could do a part's work for a patient, in words.
#pragma once

#include <string>
#include <vector>

#include "care/alternatives.hpp"
#include "desk/assessment.hpp"
#include "desk/table.hpp"

namespace sparewell::desk {

struct AlternativesQuestion {
  PatientRef patient;
  Side side = Side::left;
  ItemCode item;  ///< worn now; "" to name `function` instead
  std::optional<care::Function> function = {};
};

/// An item that could be worn, with all that is asked or told about it.
struct AlternativePart {
  Item item;
  care::Alternative ranked;  ///< its pointers are valid while the assessment is
  std::string key;           ///< "suits" or "ask"
  std::string words;         ///< verdict, size, stock, price and wear
  std::string changes;       ///< beside the part that is worn; "" where a part is missing
};

struct AlternativeParts {
  AlternativesQuestion question;
  std::vector<AlternativePart> parts;  ///< the most suitable first
  care::LeftOut left_out;
};

/// Refuses an unknown patient or item, and a question without either. `assessment` must outlive the
/// answer.
[[nodiscard]] Expected<AlternativeParts> find_alternatives(const Assessment& assessment,
                                                           const AlternativesQuestion& question);

/// "8 more are left out: 6 for their size, 2 for a conflict."; "" when there is none.
[[nodiscard]] std::string left_out_words(const care::LeftOut& left_out);

[[nodiscard]] std::vector<Column> alternative_columns();
[[nodiscard]] std::vector<TableRow> alternative_rows(const AlternativeParts& found);

}  // namespace sparewell::desk
