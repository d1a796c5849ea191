#include "clinic/branches.hpp"

#include <doctest/doctest.h>

namespace branches_test {

using namespace sparewell;

namespace {

Patient at(const std::string& ref, const std::string& place) {
  Patient patient;
  patient.ref = {ref};
  patient.place = place;
  return patient;
}

}  // namespace

TEST_CASE("A clinic without places has its main place, and everybody belongs there") {
  Clinic clinic;
  clinic.patients = {at("P1", ""), at("P2", "main store")};
  const Branches branches{clinic};
  CHECK(branches.names() == std::vector<std::string>{"main store"});
  CHECK_FALSE(branches.several());
  CHECK(branches.of({"P1"}) == 0);
  CHECK(branches.of({"P2"}) == 0);
  CHECK(branches.of({"nobody"}) == 0);
}

TEST_CASE("Stores are those recorded, with stock, with promised pieces or with patients") {
  Clinic clinic;
  clinic.places = {{"West", PlaceSort::store, ""}, {"cold room", PlaceSort::quarantine, ""}};
  clinic.shelf = {{{{"L1"}, "A", {}}, "North", 1},
                  {{{"L1"}, "A", {}}, "quarantine", 1},
                  {{{"L1"}, "A", {}}, "in transit to Attic", 1}};
  clinic.reservations = {{{"P1"}, {"L1"}, "East", 1, {}}};
  clinic.patients = {at("P1", "South"), at("P2", "cold room"), at("P3", "North")};
  const Branches branches{clinic};
  CHECK(branches.names() ==
        std::vector<std::string>{"main store", "East", "North", "South", "West"});
  CHECK(branches.several());
  CHECK(branches.of({"P1"}) == 3);
  CHECK(branches.of({"P2"}) == 0);  // a quarantine serves nobody
  CHECK(branches.of({"P3"}) == 2);
  CHECK(branches.position("West") == 4);
  CHECK_FALSE(branches.position("quarantine"));
}

}  // namespace branches_test
