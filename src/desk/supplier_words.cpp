#include "desk/supplier_words.hpp"

#include "clinic/say.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {

std::string supplier_standing(const supply::SupplierRecord& record) {
  if (record.receipts == 0) return said("nothing received");
  if (record.runs_late) return "late";
  return record.receipts < supply::least_receipts ? said("too few to tell")
                                                  : said("as quoted, or nearly");
}

std::string supplier_words(const supply::SupplierRecord& record) {
  std::string words;
  if (record.receipts == 0) {
    words = said("nothing received in two years.");
  } else {
    words = say(
        "{}: {:.1f} days from order to receipt against {:.1f} quoted ({} in two years, {} late, "
        "nine in ten {}).",
        supplier_standing(record), record.taken_days, record.quoted_days,
        count_words(record.receipts, "line", "lines"), record.late,
        record.nine_in_ten_days_late > 0
            ? say("at most {} late", count_words(record.nine_in_ten_days_late, "day", "days"))
            : std::string{said("on the day or before")});
  }
  if (record.open_lines == 0) return words;
  return say("{} {} open, {} overdue.", words, count_words(record.open_lines, "line", "lines"),
             record.overdue_lines);
}

}  // namespace sparewell::desk
