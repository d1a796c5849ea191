#include "wear/prior_check.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "wear/small_clinic.hpp"

namespace prior_check_test {

using namespace sparewell;
using namespace sparewell::wear;
using namespace sparewell::testing;

namespace {

std::string refusal_of(const PriorTable& priors) {
  const auto checked = check_priors(priors);
  return checked ? std::string{} : checked.error().sentence;
}

bool says(const std::string& sentence, const std::string& words) {
  return sentence.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("A complete and sane table of priors is accepted") {
  CHECK(refusal_of(plain_priors()).empty());
}

TEST_CASE("A missing or doubled row is named") {
  PriorTable without_liner = plain_priors();
  without_liner.lives.erase(without_liner.lives.begin());
  CHECK(says(refusal_of(without_liner), "Life prior of liner has no row without material"));

  PriorTable doubled = plain_priors();
  doubled.lives.push_back({Kind::pin, Material::metal, 700, 0.5, 2, 0.3, "s"});
  CHECK(refusal_of(doubled).empty());
  doubled.lives.push_back({Kind::pin, Material::metal, 700, 0.5, 2, 0.3, "s"});
  CHECK(says(refusal_of(doubled), "Life prior of pin in metal has two rows"));

  PriorTable without_factor = plain_priors();
  without_factor.factors.pop_back();
  CHECK(says(refusal_of(without_factor), "Factor prior of sock and impact_sport has 0 rows"));

  PriorTable without_person = plain_priors();
  without_person.persons.pop_back();
  CHECK(says(refusal_of(without_person), "Person prior of sock has 0 rows"));

  PriorTable without_ending = plain_priors();
  without_ending.endings.pop_back();
  CHECK(says(refusal_of(without_ending), "Ending prior of sock and other has 0 rows"));
  without_ending.endings.push_back({Kind::sock, EndReason::hole, 1, 1, "s"});
  CHECK(says(refusal_of(without_ending), "Ending prior of sock and hole: the reason is wear"));
}

TEST_CASE("A value outside reason is named with its row") {
  for (const double bad : {0.0, -1.0, std::nan(""), HUGE_VAL}) {
    PriorTable priors = plain_priors();
    priors.lives[1].median_days = bad;
    CHECK(says(refusal_of(priors), "Life prior of sleeve: median_days"));
    priors = plain_priors();
    priors.lives[1].median_spread = bad;
    CHECK(says(refusal_of(priors), "median_spread"));
    priors = plain_priors();
    priors.lives[1].shape = bad;
    CHECK(says(refusal_of(priors), "shape"));
    priors = plain_priors();
    priors.factors[1].life_ratio = bad;
    CHECK(says(refusal_of(priors), "Factor prior of liner and kneeling_hours: life_ratio"));
    priors = plain_priors();
    priors.factors[1].spread = bad;
    CHECK(says(refusal_of(priors), "spread"));
    priors = plain_priors();
    priors.persons[1].variance = bad;
    CHECK(says(refusal_of(priors), "Person prior of sleeve: variance"));
    priors = plain_priors();
    priors.persons[1].spread = bad;
    CHECK(says(refusal_of(priors), "Person prior of sleeve: spread"));
    priors = plain_priors();
    priors.endings[1].per_year = bad;
    CHECK(says(refusal_of(priors), "Ending prior of liner and resized: per_year"));
    priors = plain_priors();
    priors.endings[1].weight_years = bad;
    CHECK(says(refusal_of(priors), "weight_years"));
  }
}

TEST_CASE("A row without a source is refused") {
  PriorTable priors = plain_priors();
  priors.factors[3].source.clear();
  CHECK(says(refusal_of(priors), "source"));
}

}  // namespace prior_check_test
