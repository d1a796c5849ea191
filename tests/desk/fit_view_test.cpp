#include "desk/fit_view.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "desk/fit_words.hpp"
#include "desk/limb_chart.hpp"

namespace fit_view_test {

using namespace sparewell;
using namespace sparewell::desk;
using doctest::Approx;

namespace {

const Date today = make_date(2026, 11, 25);
const PatientRef ana{"P-1"};

Item sized(const std::string& code, double least, double most) {
  Item item;
  item.code = {code};
  item.kind = Kind::liner;
  item.size_min_cm = least;
  item.size_max_cm = most;
  item.size_at_cm = 4;
  return item;
}

/// Ana wears two liners of 24 to 26 cm on the left; the next smaller size lies on the shelf.
struct Clinic1 : Clinic {
  Clinic1() {
    items = {sized("LG-24", 24, 26), sized("LG-22", 22, 24)};
    patients.push_back({ana, "", "", std::nullopt, std::nullopt});
    for (int copy = 1; copy <= 2; ++copy) {
      Unit unit;
      unit.patient = ana;
      unit.item = {"LG-24"};
      unit.copy = copy;
      unit.issued_on = today - days{100};
      units.push_back(unit);
    }
    shelf.push_back({{{"LG-22"}, "A", std::nullopt}, "main store", 3});
  }
  void measure(double cm, int days_ago, double at_cm = 4) {
    measurements.push_back({ana, Side::left, today - days{days_ago}, at_cm, cm});
  }
  void shrink_to(double cm) {
    for (int i = 12; i >= 0; --i) measure(cm * std::pow(1.02, i), 91 * i);
  }
  [[nodiscard]] FitReport report(int ahead = 90) const {
    return fit_report(*this, ana, std::nullopt, today + days{ahead}, today);
  }
};

bool says(const std::string& words, const char* part) {
  return words.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("Units of one item are told once, with check, trend and the size that comes next") {
  Clinic1 clinic;
  clinic.shrink_to(24.3);
  const auto report = clinic.report();
  REQUIRE(report.parts.size() == 1);
  const FitPart& part = report.parts[0];
  CHECK(part.units == 2);
  CHECK(part.check.fit == care::Fit::fits);
  REQUIRE(part.predicted);
  // One more step of the law: 24.3 / 1.02 = 23.82 (by hand); the prior slows it a little.
  CHECK(part.predicted->circumference_cm == Approx(23.82).epsilon(0.005));
  CHECK(part.chance_below > 0.5);
  CHECK(part.next == ItemCode{"LG-22"});
  CHECK(part.next_on_hand == 3);
  REQUIRE(part.likely_outside);
  CHECK(*part.likely_outside > today);
  CHECK(*part.likely_outside < today + days{90});
  const auto text = fit_text(report);
  CHECK(says(text, "Left, LG-24 (2 in use)"));
  CHECK(says(text, "shrinks by"));
  CHECK(says(text, "LG-22 suits 23."));
  CHECK(says(text, "3 pieces are in stock."));
  CHECK(says(text, "does not replace"));
  CHECK(clinic.report(0).parts[0].chance_below < 0.5);
}

TEST_CASE("Without measurements it says what to do, and nothing is called fitting") {
  const Clinic1 clinic;
  const auto report = clinic.report();
  REQUIRE(report.parts.size() == 1);
  CHECK(report.parts[0].check.fit == care::Fit::not_known);
  CHECK_FALSE(report.parts[0].trend);
  CHECK_FALSE(report.measured);
  CHECK(says(fit_text(report), "record it"));
  CHECK_FALSE(says(fit_text(report), "fits:"));
  CHECK(limb_curves(clinic, ana, today, today + days{365}).empty());
}

TEST_CASE("Over all patients those that are outside come first, then the likeliest to be") {
  Clinic1 clinic;
  for (const char* ref : {"P-2", "P-3"}) {
    clinic.patients.push_back({{ref}, "", "", std::nullopt, std::nullopt});
    Unit unit = clinic.units[0];
    unit.patient = {ref};
    clinic.units.push_back(unit);
  }
  clinic.shrink_to(24.3);
  clinic.measurements.push_back({{"P-2"}, Side::left, today, 4, 23});
  clinic.measurements.push_back({{"P-3"}, Side::left, today, 4, 25});
  const auto leaving = leaving_parts(clinic, today + days{90}, today);
  const auto& parts = leaving.parts;
  CHECK(leaving.not_known == 0);
  REQUIRE(parts.size() == 2);
  CHECK(parts[0].patient == PatientRef{"P-2"});
  CHECK(parts[0].outside_now());
  CHECK(parts[1].patient == ana);
  CHECK(says(leaving_line(parts[1], today), "LG-22"));
}

TEST_CASE("What is not measured is not on the list, and the list says so") {
  const Clinic1 clinic;
  const auto leaving = leaving_parts(clinic, today + days{90}, today);
  CHECK(leaving.parts.empty());
  CHECK(leaving.not_known == 1);
  CHECK(says(not_known_words(leaving), "1 other size"));
}

TEST_CASE("What a limb is about to leave needs a person, what fits does not") {
  Clinic1 clinic;
  for (int i = 0; i < 5; ++i) clinic.measure(25, 91 * i);
  CHECK(limb_findings(clinic, ana, today).empty());
  Clinic1 leaving;
  leaving.shrink_to(24.3);
  const auto found = limb_findings(leaving, ana, today);
  REQUIRE(found.size() == 1);
  CHECK(found[0].finding.key == "size_leaving");
  CHECK(found[0].finding.gravity == care::Gravity::ask);
  CHECK(found[0].item == ItemCode{"LG-24"});
}

TEST_CASE("Thicker socks lately are told as a sign to measure, with the mean and not the sum") {
  Clinic1 clinic;
  clinic.measure(25, 10);
  for (const auto& [code, description] :
       {std::pair{"S1", "Sock, 1 ply"}, std::pair{"S5", "Sock, 5 ply"}}) {
    Item sock;
    sock.code = {code};
    sock.description = description;
    sock.kind = Kind::sock;
    clinic.items.push_back(sock);
  }
  for (int i = 0; i < 4; ++i) {
    Unit unit = clinic.units[0];
    unit.item = {i < 2 ? "S1" : "S5"};
    unit.issued_on = today - days{i < 2 ? 400 : 20};
    unit.copy = i;
    clinic.units.push_back(unit);
  }
  const auto found = limb_findings(clinic, ana, today);
  REQUIRE(found.size() == 1);
  CHECK(found[0].finding.key == "sock_sign");
  CHECK(says(found[0].finding.words, "5.0 plies on average"));
  CHECK(says(found[0].finding.words, "measure it"));
}

TEST_CASE("The drawing of a limb holds its dots, its band and the size that is worn") {
  Clinic1 clinic;
  clinic.shrink_to(24.3);
  clinic.measure(30, 0, 20);
  const auto curves = limb_curves(clinic, ana, today, today + days{365});
  REQUIRE(curves.size() == 2);
  CHECK(curves[0].name == "Left, 4 cm above the end");
  CHECK(curves[1].sizes.empty());
  REQUIRE(curves[0].sizes.size() == 1);
  CHECK(curves[0].sizes[0].label == "LG-24");
  const LimbMeasures measures{600, 300, 60, 20, 20, 40, 60, 16};
  const auto drawing = draw_limb(curves[0], measures);
  REQUIRE(drawing.dots.size() == 13);
  CHECK(drawing.dots.front().x < drawing.dots.back().x);
  // A limb that shrinks goes down, and down is more on a screen.
  CHECK(drawing.dots.front().y < drawing.dots.back().y);
  CHECK(drawing.today == Approx(drawing.dots.back().x));
  for (std::size_t i = 0; i < drawing.middle.size(); ++i) {
    CHECK(drawing.high[i].y <= drawing.middle[i].y);
    CHECK(drawing.middle[i].y <= drawing.low[i].y);
    CHECK(drawing.low[i].y <= drawing.bottom);
    CHECK(drawing.high[i].y >= drawing.top);
  }
  REQUIRE(drawing.sizes.size() == 1);
  CHECK(drawing.sizes[0].top < drawing.sizes[0].bottom);
  CHECK(drawing.sizes[0].has_bottom);
  CHECK_FALSE(drawing.month_ticks.empty());
  CHECK_FALSE(drawing.cm_ticks.empty());
  CHECK(drawing.dot_at(drawing.dots[3].x, drawing.dots[3].y, 5) == 3);
  CHECK_FALSE(drawing.dot_at(-100, -100, 5));
}

TEST_CASE("Labels of sizes that end alike stand one above the other") {
  LimbCurve curve;
  curve.today = today;
  curve.until = today + days{100};
  curve.dots = {{today, 25, false}};
  curve.sizes = {{"A", 24, 26}, {"B", 24, 31}, {"C", 24, 28}};
  const auto drawing = draw_limb(curve, {600, 300, 60, 20, 20, 40, 60, 16});
  REQUIRE(drawing.sizes.size() == 3);
  CHECK(drawing.sizes[0].label_bottom == Approx(drawing.sizes[0].bottom));
  CHECK(drawing.sizes[1].label_bottom == Approx(drawing.sizes[0].label_bottom - 16));
  CHECK(drawing.sizes[2].label_bottom == Approx(drawing.sizes[0].label_bottom - 32));
}

}  // namespace fit_view_test
