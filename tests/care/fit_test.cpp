#include "care/fit.hpp"

#include "care/clinic_made.hpp"

namespace fit_test {

using namespace sparewell;
using namespace sparewell::care;
using namespace sparewell::care::testing;

namespace {

Item sized() {
  auto item = made_item("LINER", Kind::liner);
  item.size_min_cm = 28;
  item.size_max_cm = 30;
  item.size_at_cm = 4;
  return item;
}

FitCheck check(const std::vector<Measurement>& measured) {
  return check_fit(sized(), ana, Side::left, measured, today);
}

}  // namespace

TEST_CASE(
    "The ends of the range belong to it, and within a tape's error it is to be measured again") {
  const auto fit_at = [](double cm) { return check({{ana, Side::left, today, 4, cm}}).fit; };
  CHECK(fit_at(27.99) == Fit::edge_smaller);
  CHECK(fit_at(28) == Fit::fits);
  CHECK(fit_at(30) == Fit::fits);
  CHECK(fit_at(30.01) == Fit::edge_larger);
  // 3.3 % over 1.96 * sqrt 2 is 1.19 % (Phlebology 2011;26(1):14-19): 0.33 cm below 28, 0.36 above
  // 30, worked out by hand.
  CHECK(fit_at(27.7) == Fit::edge_smaller);
  CHECK(fit_at(27.6) == Fit::limb_smaller);
  CHECK(fit_at(30.3) == Fit::edge_larger);
  CHECK(fit_at(30.4) == Fit::limb_larger);
  CHECK(gravity(check({{ana, Side::left, today, 4, 30.1}})) == Gravity::ask);
}

TEST_CASE("Between two heights of one day the circumference is a straight line") {
  const auto made = check({{ana, Side::left, today, 2, 26}, {ana, Side::left, today, 12, 36}});
  // 26 + (4 - 2) / (12 - 2) * (36 - 26), worked out by hand.
  REQUIRE(made.circumference_cm);
  CHECK(*made.circumference_cm == doctest::Approx(28));
  CHECK(made.interpolated);
  CHECK(made.fit == Fit::fits);
}

TEST_CASE("What was not measured is not known and never a fit") {
  CHECK(check({}).fit == Fit::not_known);
  CHECK(gravity(check({})) == Gravity::ask);
  CHECK(check({{ana, Side::right, today, 4, 29}}).fit == Fit::not_known);
  CHECK(check({{{"P-2"}, Side::left, today, 4, 29}}).fit == Fit::not_known);
  CHECK(check({{ana, Side::left, today + days{1}, 4, 29}}).fit == Fit::not_known);
  CHECK(check({{ana, Side::left, today, 20, 29}}).fit == Fit::not_known);
  CHECK(check({{ana, Side::left, today, 4, 0}}).fit == Fit::not_known);
  // Heights of two days are not joined: the limb changes.
  CHECK(check({{ana, Side::left, today - days{9}, 2, 29}, {ana, Side::left, today, 12, 29}}).fit ==
        Fit::not_known);
  auto item = sized();
  item.size_at_cm.reset();
  const std::vector<Measurement> measured{{ana, Side::left, today, 4, 29}};
  CHECK(check_fit(item, ana, Side::left, measured, today).fit == Fit::not_known);
}

TEST_CASE("The latest day that answers counts, and an old one is said to be old") {
  const auto made = check({{ana, Side::left, make_date(2026, 5, 24), 4, 29},
                           {ana, Side::left, make_date(2025, 5, 24), 4, 35},
                           {ana, Side::left, today, 20, 40}});
  CHECK(made.fit == Fit::fits);
  CHECK(made.old);
  CHECK(gravity(made) == Gravity::ask);
  CHECK_FALSE(is_old_measurement(make_date(2026, 5, 25), today));
  CHECK(is_old_measurement(make_date(2026, 5, 24), today));
  // Six months after 31 August ends with February.
  CHECK_FALSE(is_old_measurement(make_date(2026, 8, 31), make_date(2027, 2, 28)));
  CHECK(is_old_measurement(make_date(2026, 8, 31), make_date(2027, 3, 1)));
}

TEST_CASE("A part without a size range is not checked") {
  const auto made = check_fit(made_item("PIN", Kind::pin), ana, Side::left, {}, today);
  CHECK(made.fit == Fit::no_size);
  CHECK(gravity(made) == Gravity::note);
}

}  // namespace fit_test
