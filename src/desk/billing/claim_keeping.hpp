/// Puts claim lines and payments of files beside what is stored: reading a file twice changes
/// nothing, and nothing that is stored is lost.
#pragma once

#include <map>
#include <string>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "exchange/paid_rows.hpp"
#include "store/port.hpp"

namespace sparewell::desk {

enum class Kept { added, changed, unchanged };

class ClaimKeeping {
 public:
  explicit ClaimKeeping(store::UnitOfWork& work);

  /// A stored line of the same claim, patient, day, code, submission, quantity and charge, whose
  /// side, modifiers, payer and line number do not contradict, is the same line: what it lacks is
  /// filled in, what the file lacks stays. Each stored line stands for one line of the file. Any
  /// other line is added, as the next copy where the natural key is there already.
  /// `replaces` may be a payer's own number of a claim; the clinic's is taken where a remittance
  /// tells it.
  Kept keep(ClaimLine line);
  /// Lines added beside stored ones that differ from them in quantity, charge or line number alone.
  [[nodiscard]] int beside() const { return beside_; }

 private:
  struct Stored {
    store::RowId id;
    ClaimLine line;
    bool used = false;
  };
  [[nodiscard]] std::string replaced_claim(const ClaimLine& line) const;
  void note(const ClaimLine& line);
  static int free_copy(const std::vector<Stored>& alike, const ClaimLine& line);

  store::UnitOfWork& work_;
  std::unordered_map<std::string, std::vector<Stored>> stored_;  ///< by claim, patient, day, code
  std::unordered_map<std::string, std::string> claim_of_payer_number_;
  std::unordered_set<std::string> claims_;     ///< of which any line is stored
  std::unordered_set<std::string> originals_;  ///< of which an original line is
  int beside_ = 0;
};

class PaymentKeeping {
 public:
  explicit PaymentKeeping(store::UnitOfWork& work);

  struct Result {
    int added = 0;
    int changed = 0;
    int unchanged = 0;
    std::string refusal;  ///< the payment as a whole was left out
  };
  /// Keeps a payment as a whole. One that is stored with the same lines stays, and patients that
  /// have become known are filled in; one that is stored with others is refused.
  Result keep_whole(const Remittance& remittance, std::vector<RemittanceLine> lines);
  /// Adds to a payment the lines that are not stored, each stored line standing for one. With
  /// `by_position` a line is stored only if it is so at its position.
  Result keep_lines(const Remittance& remittance, std::vector<RemittanceLine> lines,
                    bool by_position);

 private:
  struct Payment {
    store::RowId id;
    Remittance remittance;
    std::map<int, store::Row<RemittanceLine>> lines;  ///< by position
  };
  using Key = std::pair<std::string, std::string>;

  void add(Payment& payment, const RemittanceLine& line);
  Kept fill_in(store::Row<RemittanceLine>& stored, const RemittanceLine& line);

  store::UnitOfWork& work_;
  std::map<Key, Payment> payments_;  ///< by payer and reference
};

}  // namespace sparewell::desk
