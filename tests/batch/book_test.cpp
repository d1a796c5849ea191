// Parts booked for visits of the sample clinic, by the program that users run.
#include <doctest/doctest.h>

#include "batch/sample_clinic.hpp"

namespace book_test {

namespace {

using Json = nlohmann::json;

/// The line of the item; null when nothing of it is proposed.
Json proposed(const SampleClinic& clinic, const std::string& item) {
  const auto ran = clinic.run({"propose"});
  const auto document = ran.json();
  for (const auto& line : document["lines"]) {
    if (line["item_code"] == item) return line;
  }
  return nullptr;
}

}  // namespace

TEST_CASE("A booking is checked, listed, ordered for, and cancelled") {
  const SampleClinic clinic;
  const auto refused = clinic.run({"book", "--patient", "P-9999", "--item", "SG04-M"});
  CHECK(refused.status == 2);
  // P-0059 is sensitive to mineral oil, which the gel sleeves declare.
  const std::vector<std::string> asked{"book",       "--patient",  "P-0059", "--item",
                                       "SG04-M",     "--side",     "left",   "--on",
                                       "2026-12-01", "--quantity", "30"};
  const auto stopped = clinic.run(asked);
  CAPTURE(stopped.errors);
  CHECK(stopped.status == 1);
  CHECK(stopped.json()["recorded"] == false);
  CHECK(clinic.run({"bookings"}).json()["bookings"].empty());
  auto decided = asked;
  decided.insert(decided.end(), {"--override", "B. Clinician", "--because", "worn over a sock"});
  const auto before = proposed(clinic, "SG04-M");
  const auto booked = clinic.run(decided);
  CAPTURE(booked.errors);
  REQUIRE(booked.json()["recorded"] == true);
  CHECK(booked.json()["booking"]["quantity"] == 30);
  CHECK(booked.json()["booking"]["place"] == "main store");

  const auto listed = clinic.run({"bookings", "--patient", "P-0059"});
  CHECK(listed.status == 1);  // thirty are more than there are
  REQUIRE(listed.json()["bookings"].size() == 1);
  CHECK(listed.json()["bookings"][0]["needed_on"] == "2026-12-01");
  CHECK(listed.json()["bookings"][0]["served"] != "served");
  const auto after = proposed(clinic, "SG04-M");
  REQUIRE_FALSE(after.is_null());
  CHECK(after["reserved"] == 30);
  CHECK(after["booked"] == 30);
  CHECK(after["why"].get<std::string>().find("30 reserved, all of them for visits") !=
        std::string::npos);
  const int ordered_before = before.is_null() ? 0 : before["quantity"].get<int>();
  CHECK(after["quantity"].get<int>() > ordered_before);

  CHECK(clinic.run({"unbook", "--patient", "P-0059", "--item", "SG04-M", "--quantity", "31"})
            .status == 2);
  const auto some =
      clinic.run({"unbook", "--patient", "P-0059", "--item", "SG04-M", "--quantity", "29"});
  CHECK(some.status == 0);
  CHECK(some.json()["cancelled"] == 29);
  CHECK(some.json()["quantity"] == 1);
  CHECK(clinic.tell({"bookings"}).out.find("P-0059: 1 piece of SG04-M for 1 Dec 2026") !=
        std::string::npos);
  CHECK(clinic.run({"unbook", "--patient", "P-0059", "--item", "SG04-M"}).status == 0);
  CHECK(proposed(clinic, "SG04-M") == before);
  CHECK(clinic.run({"unbook", "--patient", "P-0059", "--item", "SG04-M"}).status == 2);
  CHECK(clinic.run({"verify"}).status == 0);
}

}  // namespace book_test
