// The books of the sample clinic compared by the program that users run.
#include <algorithm>
#include <sstream>

#include <doctest/doctest.h>

#include "batch/sample_clinic.hpp"

namespace reconcile_test {

namespace {

using nlohmann::json;

struct Planted {
  std::string what;
  std::string reference;  ///< patient or order
  std::string claim;      ///< the first word of the detail
};

/// The rows of sample-data/planted.csv that are about `file`.
std::vector<Planted> planted_in(const std::string& file) {
  std::istringstream lines{read_file(SPAREWELL_SOURCE_DIR "/sample-data/planted.csv")};
  std::vector<Planted> rows;
  for (std::string line; std::getline(lines, line);) {
    const auto at = line.find("," + file + ",");
    if (at == std::string::npos) continue;
    auto what = line.substr(0, at);
    std::erase(what, '"');
    const auto rest = line.substr(at + file.size() + 2);
    const auto comma = rest.find(',');
    auto detail = rest.substr(comma + 1);
    std::erase(detail, '"');
    rows.push_back({what, rest.substr(0, comma), detail.substr(0, detail.find_first_of(" :"))});
  }
  return rows;
}

/// What the program calls that disagreement.
std::string word_of(const std::string& planted) {
  if (planted == "duplicate line") return "billed twice";
  return planted;
}

bool is_there(const json& findings, const Planted& row) {
  return std::ranges::any_of(findings, [&](const json& finding) {
    if (finding["kind"] != word_of(row.what)) return false;
    if (finding["patient_ref"] == row.reference) return true;
    return finding["reference"] == row.reference || finding["reference"] == row.claim ||
           finding["other"] == row.reference;
  });
}

}  // namespace

TEST_CASE("Every disagreement that was planted among claims and invoices is found") {
  const SampleClinic clinic;
  const auto ran = clinic.run({"reconcile"});
  CAPTURE(ran.errors);
  REQUIRE(ran.status == 1);
  const auto findings = ran.json()["findings"];
  for (const auto* file : {"claims.csv", "invoices.csv"}) {
    const auto rows = planted_in(file);
    CHECK(rows.size() >= 6);
    for (const auto& row : rows) {
      CAPTURE(row.what);
      CAPTURE(row.reference);
      CHECK(is_there(findings, row));
    }
  }
  // Each is told in words with both sides, and has a key of its own.
  std::vector<std::string> keys;
  for (const auto& finding : findings) {
    CHECK(finding["words"].get<std::string>().size() > 20);
    CHECK(finding["remedy_words"].get<std::string>().size() > 10);
    CHECK(finding["our_side"].size() + finding["other_side"].size() > 0);
    keys.push_back(finding["key"]);
  }
  std::ranges::sort(keys);
  CHECK(std::ranges::adjacent_find(keys) == keys.end());
}

TEST_CASE("The money of claims ties out: charged is what was taken back, paired or left alone") {
  const SampleClinic clinic;
  const auto document = clinic.run({"reconcile", "--all", "--pairs"}).json();
  REQUIRE(document["claim_totals"].size() == 1);
  const auto& total = document["claim_totals"][0];
  CHECK(total["charged_minor"].get<long long>() ==
        total["replaced_minor"].get<long long>() + total["reversed_minor"].get<long long>() +
            total["before_books_minor"].get<long long>() + total["paired_minor"].get<long long>() +
            total["alone_minor"].get<long long>());
  CHECK(total["paired_minor"].get<long long>() > 0);
  CHECK(document["pairs"].size() == document["pairs_count"].get<std::size_t>());
  CHECK(document["leftovers"].size() == document["leftovers_count"].get<std::size_t>());
}

TEST_CASE("A finding that was answered leaves the list, and comes back when it is opened again") {
  const SampleClinic clinic;
  const auto duplicates = [&](bool all) {
    std::vector<std::string> words{"reconcile", "--kind", "billed twice"};
    if (all) words.emplace_back("--all");
    return clinic.run(words).json()["findings"];
  };
  const auto open = duplicates(false);
  REQUIRE(open.size() == 1);
  const std::string key = open[0]["key"];
  const auto answered = clinic.run({"answer", "--finding", key, "--as", "written off", "--reason",
                                    "the payer took it back itself", "--by", "Bea"});
  CAPTURE(answered.errors);
  CHECK(answered.status == 0);
  CHECK(answered.json()["answer"] == "written off");
  CHECK(duplicates(false).empty());
  const auto settled = duplicates(true);
  REQUIRE(settled.size() == 1);
  CHECK(settled[0]["state"] == "settled");
  CHECK(settled[0]["answers"][0]["reason"] == "the payer took it back itself");
  CHECK(clinic.run({"reconcile", "--kind", "billed twice"}).status == 0);
  const auto opened = clinic.run({"answer", "--finding", key, "--as", "open again", "--reason",
                                  "it did not", "--by", "Bea"});
  CHECK(opened.status == 0);
  REQUIRE(duplicates(false).size() == 1);
  CHECK(duplicates(false)[0]["answers"].size() == 2);
  const auto asked = clinic.run({"answer", "--finding", key, "--as", "asked", "--reason",
                                 "the payer", "--by", "Bea", "--ask-again", "2026-12-20"});
  CHECK(asked.status == 0);
  CHECK(duplicates(true)[0]["state"] == "waiting");
}

TEST_CASE("Answers that make no sense are refused in one sentence") {
  const SampleClinic clinic;
  const auto unknown = clinic.run(
      {"answer", "--finding", "no such key", "--as", "accepted", "--reason", "r", "--by", "Bea"});
  CHECK(unknown.status == 2);
  CHECK(unknown.errors.find("There is no finding with the key") != std::string::npos);
  const auto kind = clinic.run({"reconcile", "--kind", "wrong colour"});
  CHECK(kind.status == 2);
  CHECK(kind.errors.find("wrong side") != std::string::npos);
}

TEST_CASE("A reason on file settles a part that was replaced early") {
  const SampleClinic clinic;
  const auto early = [&] {
    return clinic.run({"reconcile", "--kind", "replaced early, no reason"}).json()["findings"];
  };
  const auto before = early();
  REQUIRE(!before.empty());
  const auto& finding = before[0];
  const auto noted =
      clinic.run({"note-paper", "--patient", finding["patient_ref"], "--side", finding["side"],
                  "--item", finding["item_code"], "--issued", finding["since"], "--paper", "reason",
                  "--says", "the limb has changed", "--by", "Cem"});
  CAPTURE(noted.errors);
  CHECK(noted.status == 0);
  CHECK(early().size() == before.size() - 1);
  const auto again = clinic.run({"note-paper", "--patient", finding["patient_ref"], "--side",
                                 finding["side"], "--item", finding["item_code"], "--issued",
                                 finding["since"], "--paper", "reason"});
  CHECK(again.status == 2);
  CHECK(again.errors.find("on record for that part already") != std::string::npos);
}

}  // namespace reconcile_test
