// Books of an invented clinic in which everything agrees but for what is planted.
#pragma once

#include <cstdint>
#include <optional>
#include <random>
#include <string>
#include <vector>

#include "billing/code_table.hpp"
#include "billing/finding.hpp"
#include "billing/rule_book.hpp"
#include "clinic/clinic.hpp"

namespace sparewell::test {

inline const Date books_today = make_date(2026, 11, 25);
inline const Currency euro{"EUR"};

/// An error put into the books, and the finding it is to be.
struct PlantedError {
  billing::FindingKind kind = billing::FindingKind::issued_not_billed;
  PatientRef patient;
  std::string code;
  int quantity = 0;
  std::optional<std::int64_t> cents;  ///< of the finding's money; empty: unknown

  friend auto operator<=>(const PlantedError&, const PlantedError&) = default;
};

struct BooksMade {
  Clinic clinic;
  std::vector<PlantedError> planted;
};

/// Sorts of errors; patient number n gets sort n modulo their number.
inline constexpr int sorts_of_errors = 26;

/// How large the books are to be.
struct BookShape {
  int patients = 0;
  int visits = 5;             ///< of each
  bool single_socks = false;  ///< not by the dozen
  bool planted = true;        ///< one error a patient
};

/// Patients with one or both sides come every four or five months and are handed liners, sleeves
/// and socks by the dozen. Claims are dated a few days off, split, reversed and billed again,
/// replaced; parts come back.
[[nodiscard]] BooksMade make_books(std::uint64_t seed, const BookShape& shape);

[[nodiscard]] billing::CodeTable test_codes();
[[nodiscard]] billing::RuleBook test_rules();
[[nodiscard]] std::int64_t price_of(const std::string& code);

/// What the generator draws from; the same numbers on every machine.
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : engine_{seed} {}
  /// From `low` to `high`, both included.
  int whole(int low, int high) {
    return low + static_cast<int>(engine_() % static_cast<std::uint64_t>(high - low + 1));
  }
  bool chance(int percent) { return whole(1, 100) <= percent; }
  template <class List>
  void shuffle(List& list) {
    for (std::size_t i = list.size(); i > 1; --i) {
      std::swap(list[i - 1], list[static_cast<std::size_t>(whole(0, static_cast<int>(i) - 1))]);
    }
  }

 private:
  std::mt19937_64 engine_;
};

/// Pieces of one item handed out at once, and how they are billed.
struct Slot {
  Date day;
  Side side = Side::left;
  std::string item;
  std::string code;
  int quantity = 1;
  std::optional<Date> ended_on = {};
  std::optional<EndReason> end_reason = {};
  bool billed = true;      ///< by the ordinary line
  bool planted = false;    ///< has no noise
  bool reason = false;     ///< the paper "reason" is on file
  std::string no_paper;    ///< the paper that is not on file
  bool unsigned_ = false;  ///< no proof of delivery
};

/// One patient while their books are made.
struct PatientMade {
  PatientRef ref;
  std::string payer;
  std::vector<Side> sides;
  std::vector<std::vector<Slot>> visits;
};

/// Adds lines, and errors, to the books of one patient; `sort` from 0.
void plant(BooksMade& books, PatientMade& patient, Dice& dice, int sort);

/// The line that bills a slot as it should be.
[[nodiscard]] ClaimLine line_of(const PatientMade& patient, std::size_t visit, const Slot& slot);
[[nodiscard]] std::string modifier_of(Side side);
[[nodiscard]] Money cents(std::int64_t minor);

}  // namespace sparewell::test
