#include "supply/lead_time.hpp"

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"

namespace lead_time_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;

TEST_CASE("Without receipts the lead time is the quoted one") {
  const Clinic clinic = clinic_with_item();
  const LeadTime lead = LeadTimes{clinic}.of(clinic.items[0]);
  CHECK(lead.mean() == 7);
  CHECK(lead.quantile(0.9) == 7);
  CHECK_FALSE(lead.assumed());
  CHECK(lead.receipts() == 0);
}

TEST_CASE("An item without quoted days is given 14, and says so") {
  Clinic clinic = clinic_with_item();
  clinic.items[0].lead_days.reset();
  const LeadTime lead = LeadTimes{clinic}.of(clinic.items[0]);
  CHECK(lead.mean_days() == assumed_lead_days);
  CHECK(lead.assumed());
}

TEST_CASE("Receipts pull the quoted days towards the supplier's record") {
  Clinic clinic = clinic_with_item();
  for (int i = 0; i < 5; ++i) clinic.order_lines.push_back(received_after(i < 4 ? 9 : 17, i));
  const LeadTime lead = LeadTimes{clinic}.of(clinic.items[0]);
  CHECK(lead.receipts() == 5);
  // By hand: 7 with weight 5, 9 with weight 4, 17 with weight 1, of 10.
  REQUIRE(lead.distribution().size() == 3);
  CHECK(lead.distribution()[0].chance == doctest::Approx(0.5));
  CHECK(lead.distribution()[1].chance == doctest::Approx(0.4));
  CHECK(lead.mean() == doctest::Approx(8.8));
  CHECK(lead.mean_days() == 9);
  CHECK(lead.quantile(0.5) == 7);
  CHECK(lead.quantile(0.9) == 9);
  CHECK(lead.quantile(0.95) == 17);
}

TEST_CASE("Deviations are shared by the supplier's items and never make a negative lead time") {
  Clinic clinic = clinic_with_item();
  clinic.items.push_back(stocked_item("L2"));
  clinic.items.back().lead_days = 2;
  clinic.order_lines = {received_after(3, 0)};  // four days early for L1
  const LeadTime lead = LeadTimes{clinic}.of(clinic.items[1]);
  CHECK(lead.distribution()[0].days == 0);
  CHECK(lead.distribution()[1].days == 2);
  Item other = stocked_item("L3", "Other Supplies");
  CHECK(LeadTimes{clinic}.of(other).receipts() == 0);
}

TEST_CASE("Lines that are cancelled, drafts, or not complete teach nothing") {
  Clinic clinic = clinic_with_item();
  clinic.order_lines = {received_after(9, 0), received_after(9, 1), received_after(9, 2)};
  clinic.order_lines[0].state = OrderState::cancelled;
  clinic.order_lines[1].quantity = 4;
  clinic.order_lines[2].received_on.reset();
  CHECK(LeadTimes{clinic}.of(clinic.items[0]).receipts() == 0);
}

TEST_CASE("An item with many receipts of its own goes by them more than by its supplier's others") {
  Clinic clinic = clinic_with_item();
  clinic.items.push_back(stocked_item("L2"));
  for (int i = 0; i < 15; ++i) {  // L1 comes on the day quoted, L2 ten days late
    clinic.order_lines.push_back(received_after(7, i));
    clinic.order_lines.push_back(received_after(17, 100 + i));
    clinic.order_lines.back().item = {"L2"};
  }
  const LeadTimes times{clinic};
  const LeadTime prompt = times.of(clinic.items[0]);
  const LeadTime late = times.of(clinic.items[1]);
  CHECK(late.receipts() == 30);
  CHECK(late.own_receipts() == 15);
  // By hand: the supplier's record is late with 15 of 35 (5 of them the quotation); with weight 10
  // beside 15 receipts of the item's own, all of them late or none.
  CHECK(prompt.distribution().back().chance == doctest::Approx(10 * 15.0 / 35 / 25));
  CHECK(late.distribution().back().chance == doctest::Approx((10 * 15.0 / 35 + 15) / 25));
}

}  // namespace lead_time_test
