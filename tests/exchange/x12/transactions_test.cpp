#include "exchange/x12/transactions.hpp"

#include <doctest/doctest.h>

#include "x12_made.hpp"

namespace transactions_test {

using namespace sparewell;
using namespace sparewell::exchange;
using namespace sparewell::exchange::testing;

namespace {

std::string replaced(std::string text, std::string_view what, std::string_view with) {
  const auto at = text.find(what);
  REQUIRE(at != std::string::npos);
  return text.replace(at, what.size(), with);
}

}  // namespace

// Envelope and fixed widths of ISA from memory, confirmed by the public samples.
TEST_CASE("Several groups and transactions come out of their envelopes") {
  const auto made = x12_made({small_claims(), sample_payment(), small_claims()});
  const auto file = read_x12("both.x12", made.text);
  REQUIRE(file);
  REQUIRE(file->transactions.size() == 3);
  CHECK(file->transactions[0].kind == "837");
  CHECK(file->transactions[1].kind == "835");
  CHECK(file->transactions[1].implementation == "005010X221A1");
  CHECK(file->reading.notes.empty());
  CHECK(file->reading.differences.empty());
  CHECK(file->reading.segments == made.segments);
}

TEST_CASE("Delimiters are those of the first segment, with or without line breaks") {
  auto text = x12_made({sample_payment()}).text;
  const auto wanted = read_x12("a", text)->transactions[0].segments[6].part(0, 1);
  std::string other;
  for (const char c : text) {
    if (c == '\n') continue;
    other += c == '*' ? '|' : c == ':' ? '>' : c == '~' ? '\n' : c;
  }
  const auto file = read_x12("b", other);
  REQUIRE(file);
  REQUIRE(file->transactions.size() == 1);
  CHECK(file->transactions[0].segments[6].part(0, 1) == wanted);
  CHECK(file->transactions[0].segments[8].part(1, 3) == "HF");
  CHECK(file->reading.notes.empty());
}

TEST_CASE("Counts and control numbers that do not fit are noted") {
  const auto text = x12_made({sample_payment()}).text;
  const auto notes = [](const std::string& bytes) {
    return read_x12("a", bytes)->reading.notes.size();
  };
  CHECK(notes(replaced(text, "SE*21*", "SE*20*")) == 1);
  CHECK(notes(replaced(text, "GE*1*1", "GE*2*2")) == 2);
  CHECK(notes(replaced(text, "IEA*1*000000001", "IEA*1*000000002")) == 1);
  CHECK(notes(replaced(text, "SE*21*", "SE*0021*")) == 0);
}

TEST_CASE("A file that is cut off is said to be") {
  const auto text = x12_made({sample_payment()}).text;
  const auto file = read_x12("a", text.substr(0, text.find("CLP*999999")));
  REQUIRE(file);
  CHECK(file->transactions.size() == 1);
  CHECK(file->reading.differences.size() == 3);  // ISA, GS and ST have no end
}

TEST_CASE("What is no X12 file is refused in one sentence") {
  CHECK_FALSE(looks_like_x12("claim_ref,code\n"));
  CHECK_FALSE(looks_like_x12("ISAAC,code\n"));
  CHECK(looks_like_x12("\xEF\xBB\xBF\r\nISA*00*"));
  const auto file = read_x12("a", "ISA*00*          *00*");
  REQUIRE_FALSE(file);
  CHECK(file.error().sentence.starts_with("a does not begin"));
}

TEST_CASE("Letters of ISO 8859-1 are read") {
  const auto text = replaced(x12_made({sample_payment()}).text, "Invented Clinic", "Invent\xE9");
  const auto file = read_x12("a", text);
  REQUIRE(file);
  CHECK(file->transactions[0].segments[4].at(2) == "Invent\xC3\xA9");
  CHECK(file->reading.notes.size() == 1);
}

}  // namespace transactions_test
