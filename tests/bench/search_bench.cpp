// How long the search of the window takes among a million entries, beside a plain scan of one
// folded text an entry.
#include <array>
#include <cstdlib>
#include <memory>
#include <random>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "bench/best_seconds.hpp"
#include "desk/find_words.hpp"
#include "desk/search/search_index.hpp"

namespace {

using namespace sparewell;

constexpr unsigned patient_count = 10'000;
constexpr unsigned item_count = 400;
const Date today = make_date(2026, 11, 25);

/// Invented names of two to four syllables.
std::string made_name(std::mt19937& random) {
  static constexpr std::array<const char*, 12> syllables{"an", "bo", "cel", "da",  "eri", "fin",
                                                         "ga", "ho", "iv",  "lum", "mor", "tes"};
  std::string name;
  const auto count = 2 + random() % 3;
  for (unsigned i = 0; i < count; ++i) name += syllables[random() % syllables.size()];
  name.front() = static_cast<char>(name.front() - 'a' + 'A');
  return name;
}

PatientRef patient_ref(unsigned number) {
  return {fmt::format("P-{:05}", number % patient_count)};
}

ItemCode item_code(unsigned number) {
  return {fmt::format("LIN{}-{}", number % item_count / 4, "SMLX"[number % 4])};
}

/// `parts` units, half as many claims, and an order for every ten of them.
Clinic made_clinic(unsigned parts) {
  std::mt19937 random{20261125};
  Clinic clinic;
  for (unsigned i = 0; i < patient_count; ++i) {
    Patient patient;
    patient.ref = patient_ref(i);
    patient.given_name = made_name(random);
    patient.family_name = made_name(random);
    clinic.patients.push_back(patient);
  }
  for (unsigned i = 0; i < item_count; ++i) {
    Item item;
    item.code = item_code(i);
    item.gtin = fmt::format("{:014}", i);
    clinic.items.push_back(item);
  }
  for (unsigned i = 0; i < parts; ++i) {
    Unit unit;
    unit.patient = patient_ref(static_cast<unsigned>(random()));
    unit.item = item_code(static_cast<unsigned>(random()));
    unit.lot = fmt::format("L{}", random() % 20'000);
    unit.serial = fmt::format("{}", 1'000'000 + i);
    unit.issued_on = today - days{random() % 2000};
    clinic.units.push_back(unit);
    if (i % 2 == 0) {
      ClaimLine line;
      line.claim_ref = fmt::format("C-{:07}", i);
      line.patient = unit.patient;
      line.service_date = unit.issued_on;
      clinic.claim_lines.push_back(line);
    }
    if (i % 10 == 0) {
      OrderLine line;
      line.supplier = {"Example Supplies"};
      line.order_ref = fmt::format("PO-{:06}", i / 10);
      line.ordered_on = unit.issued_on;
      clinic.order_lines.push_back(line);
    }
  }
  return clinic;
}

/// What a plain list searches in: one folded text an entry.
std::vector<std::string> plain_texts(const Clinic& clinic) {
  std::vector<std::string> texts;
  const auto add = [&](const std::string& text) { texts.push_back(desk::folded(text)); };
  for (const auto& patient : clinic.patients) {
    add(fmt::format("{} {}", patient.ref.text, desk::full_name(patient)));
  }
  for (const auto& unit : clinic.units) {
    add(fmt::format("{} {} {}", unit.serial, unit.lot, unit.item.text));
  }
  for (const auto& item : clinic.items) add(fmt::format("{} {}", item.code.text, item.gtin));
  for (const auto& line : clinic.order_lines) {
    add(fmt::format("{} {}", line.order_ref, line.supplier.text));
  }
  for (const auto& line : clinic.claim_lines) add(line.claim_ref);
  return texts;
}

std::size_t scan_plainly(const std::vector<std::string>& texts, const std::string& typed) {
  const desk::FindWords words{typed};
  std::size_t found = 0;
  for (const auto& text : texts) found += words.match(text) ? 1 : 0;
  return found;
}

}  // namespace

int main(int count, char** arguments) {
  const auto parts = count > 1 ? static_cast<unsigned>(std::atoi(arguments[1])) : 620'000;
  const auto day = std::make_shared<const desk::Day>(desk::records_only(made_clinic(parts), today));
  const auto texts = plain_texts(day->clinic());
  std::unique_ptr<desk::SearchIndex> index;
  const double making =
      bench::best_seconds(1, [&] { index = std::make_unique<desk::SearchIndex>(day); });
  fmt::print("{} patients, {} entries: index made in {:.2f} s\n", patient_count, index->size(),
             making);
  fmt::print("{:<16} {:>9} {:>10} {:>10} {:>7}\n", "typed", "found", "search", "scan", "ratio");
  for (const char* typed : {"1", "l", "p-", "an", "1000", "1400017", "p-00017", "c-0400", "lumga",
                            "lum fin", "l170 lin7-m", "00017", "po-0123", "no such thing"}) {
    desk::Hits hits;
    std::size_t plain = 0;
    const double ours = bench::best_seconds(5, [&] { hits = index->find(typed); });
    const double peer = bench::best_seconds(5, [&] { plain = scan_plainly(texts, typed); });
    const auto found = hits.hits.size() + hits.more;
    fmt::print("{:<16} {:>9} {:>7.2f} ms {:>7.2f} ms {:>7.1f}{}\n", typed, found, ours * 1e3,
               peer * 1e3, peer / ours, found == plain ? "" : "  (differs)");
  }
}
