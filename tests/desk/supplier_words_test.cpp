#include "desk/supplier_words.hpp"

#include <doctest/doctest.h>

namespace supplier_words_test {

using namespace sparewell;
using namespace sparewell::desk;

TEST_CASE("A late supplier is called late, with the days and the lines behind it") {
  supply::SupplierRecord record{{"Tern"}, 40, 9, 12.04, 24, 8, 3, 1, true};
  CHECK(supplier_words(record) ==
        "late: 12.0 days from order to receipt against 9.0 quoted (40 lines in two years, 24 late, "
        "nine in ten at most 8 days late). 3 lines open, 1 overdue.");
  record.runs_late = false;
  record.nine_in_ten_days_late = 0;
  record.open_lines = 0;
  CHECK(supplier_words(record).starts_with("as quoted, or nearly: "));
  CHECK(supplier_words(record).ends_with("nine in ten on the day or before)."));
  record.receipts = 2;
  CHECK(supplier_words(record).starts_with("too few to tell"));
  record.receipts = 0;
  CHECK(supplier_words(record) == "nothing received in two years.");
}

}  // namespace supplier_words_test
