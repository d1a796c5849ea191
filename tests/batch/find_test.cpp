// Finding anything by words or by a label, by the program that users run.
#include <doctest/doctest.h>

#include "batch/sample_clinic.hpp"

namespace find_test {

TEST_CASE("What answers to the words is listed, an exact reference first") {
  const SampleClinic clinic;
  const auto patient = clinic.run({"find", "p-0004"});
  CAPTURE(patient.errors);
  REQUIRE(patient.status == 0);
  const auto hits = patient.json()["hits"];
  CHECK(hits.at(0)["kind"] == "Patient");
  CHECK(hits.at(0)["patient_ref"] == "P-0004");
  const auto few = clinic.run({"find", "liner", "--most", "2"}).json();
  CHECK(few["hits"].size() == 2);
  CHECK(few["more"].get<int>() > 0);
  CHECK(clinic.run({"find", "nobody of that name"}).status == 1);
}

TEST_CASE("A label leads to the lot on the shelf, and says what of it is not here") {
  const SampleClinic clinic;
  // Item and lot: sample-data/clinic/catalogue.csv and stock.csv.
  const auto lot = clinic.run({"find", "(01)02900000010215(10)V2600929"});
  CAPTURE(lot.errors);
  REQUIRE(lot.status == 0);
  const auto document = lot.json();
  REQUIRE(document["hits"].size() == 1);
  CHECK(document["hits"][0]["item_code"] == "LS10-24");
  CHECK(document["hits"][0]["lot"] == "V2600929");
  CHECK(document["label"] == "");
  const auto unknown = clinic.run({"find", "(01)02900000010215(21)NEVERSEEN"}).json();
  CHECK(unknown["hits"].at(0)["item_code"] == "LS10-24");
  CHECK(std::string{unknown["label"]}.find("NEVERSEEN") != std::string::npos);
  // The check digit of the item number is wrong.
  const auto misread = clinic.run({"find", "(01)02900000010216(10)V2600929"}).json();
  CHECK(misread["hits"].empty());
  CHECK(misread["label"] != "");
}

}  // namespace find_test
