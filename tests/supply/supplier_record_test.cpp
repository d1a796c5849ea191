#include "supply/supplier_record.hpp"

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"

namespace supplier_record_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;

TEST_CASE("A supplier's record sets what was taken beside what was quoted") {
  Clinic clinic = clinic_with_item();  // seven days quoted
  int i = 0;
  for (const int taken : {6, 7, 9, 9, 12, 17}) {
    clinic.order_lines.push_back(received_after(taken, i++));
  }
  clinic.order_lines.push_back(placed(3, today - days{8}));  // a day overdue
  clinic.order_lines.push_back(placed(1, today - days{7}, "O2"));
  clinic.order_lines.push_back(placed(1, today - days{50}, "O3"));
  clinic.order_lines.back().state = OrderState::cancelled;
  const auto records = supplier_records(clinic, today);
  REQUIRE(records.size() == 1);
  CHECK(records[0].receipts == 6);
  CHECK(records[0].quoted_days == doctest::Approx(7));
  CHECK(records[0].taken_days == doctest::Approx(10));
  CHECK(records[0].late == 4);
  CHECK(records[0].nine_in_ten_days_late == 10);
  CHECK(records[0].open_lines == 2);
  CHECK(records[0].overdue_lines == 1);
  // By hand: mean 3, standard deviation sqrt(82 / 5) = 4.05, standard error 1.653: 1.81 of them.
  CHECK(records[0].runs_late);
}

TEST_CASE("Few receipts, old ones, and punctual ones make no late supplier") {
  Clinic clinic = clinic_with_item();
  for (int i = 0; i < 4; ++i) clinic.order_lines.push_back(received_after(20, i));
  CHECK(!supplier_records(clinic, today).front().runs_late);
  for (int i = 0; i < 9; ++i) clinic.order_lines.push_back(received_after(20, 1000 + i));
  CHECK(supplier_records(clinic, today).front().receipts == 4);
  for (int i = 0; i < 30; ++i)
    clinic.order_lines.push_back(received_after(i % 2 == 0 ? 6 : 8, 10 + i));
  clinic.order_lines.erase(clinic.order_lines.begin(), clinic.order_lines.begin() + 13);
  CHECK(!supplier_records(clinic, today).front().runs_late);
}

}  // namespace supplier_record_test
