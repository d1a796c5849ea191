#include "desk/supplier_words.hpp"

#include "clinic/say.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {

std::string supplier_standing(const supply::SupplierRecord& record) {
  if (record.receipts == 0) return said("nothing received");
  if (record.runs_late) return said("late");
  return record.receipts < supply::least_receipts ? said("too few to tell")
                                                  : said("as quoted, or nearly");
}

namespace {

/// How many days orders took, in one sentence.
std::string days_words(const supply::SupplierRecord& record) {
  if (record.receipts == 0) return said("nothing received in two years.");
  const auto lines = count_words(record.receipts, "line", "lines");
  if (record.nine_in_ten_days_late <= 0) {
    return say(
        "{}: {:.1f} days from order to receipt against {:.1f} quoted ({} in two years, {} late, "
        "nine in ten on the day or before).",
        supplier_standing(record), record.taken_days, record.quoted_days, lines, record.late);
  }
  return say(
      "{}: {:.1f} days from order to receipt against {:.1f} quoted ({} in two years, {} late, nine "
      "in ten at most {} late).",
      supplier_standing(record), record.taken_days, record.quoted_days, lines, record.late,
      count_words(record.nine_in_ten_days_late, "day", "days"));
}

}  // namespace

std::string supplier_words(const supply::SupplierRecord& record) {
  const auto words = days_words(record);

  if (record.open_lines == 0) return words;
  return say("{} {} open, {} overdue.", words, count_words(record.open_lines, "line", "lines"),
             record.overdue_lines);
}

}  // namespace sparewell::desk
