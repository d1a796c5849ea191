/// May this item be handed to this patient for this side on this day? The checks and their words.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "care/gravity.hpp"
#include "clinic/clinic.hpp"
#include "clinic/refusal.hpp"

namespace sparewell::desk {

struct IssueQuestion {
  PatientRef patient;
  Side side = Side::left;
  ItemCode item;
  int quantity = 1;
  std::string lot;     ///< "" for first expiry, first out
  std::string serial;  ///< "" when none is known
  std::string place;   ///< "" for every store
  Date day;
  std::optional<Date> label_use_by;  ///< as the scanned label has it
  /// Days that such a part is expected to last with this patient; empty: by the built-in beliefs,
  /// in reference use.
  std::optional<int> expected_days = {};
};

/// One thing to know before the part changes hands.
struct IssueFinding {
  std::string key;  ///< stable, for programs: "conflict", "expired" ...
  care::Gravity gravity = care::Gravity::note;
  bool can_override = true;  ///< false where there is nothing to hand over
  std::string words;         ///< one or two sentences
};

struct IssueCheck {
  IssueQuestion question;
  Patient patient;
  Item item;
  std::optional<Prosthesis> prosthesis;  ///< worn on that side on that day
  std::vector<StockLevel> taken;         ///< what is to be taken from the shelf, in this order
  std::vector<IssueFinding> findings;    ///< the gravest first

  /// The worst of the findings; note when there are none.
  [[nodiscard]] care::Gravity gravity() const;
  [[nodiscard]] bool stops() const { return gravity() == care::Gravity::stops; }
  /// A stop that no clinician can decide away.
  [[nodiscard]] bool cannot_be_done() const;
};

/// Refuses patients and items that are not recorded, and a quantity below one.
[[nodiscard]] Expected<IssueCheck> check_issue(const Clinic& clinic, const IssueQuestion& question);

/// Of these checks those that need no piece on the shelf: sensitivities, size, thread, chain.
[[nodiscard]] Expected<IssueCheck> check_without_piece(const Clinic& clinic,
                                                       const IssueQuestion& question);

/// The same for pieces that are named already, as when they are lent: the shelf is not asked.
[[nodiscard]] Expected<IssueCheck> check_pieces(const Clinic& clinic, const IssueQuestion& question,
                                                std::vector<StockLevel> pieces);

/// "Stops", "Ask first", "Note": the gravity in words, because colour alone does not say it.
[[nodiscard]] std::string gravity_words(care::Gravity gravity);
/// The sentences of the findings of this gravity, one after the other.
[[nodiscard]] std::string words_of(const IssueCheck& check, care::Gravity gravity);
/// "stops", "ask", "note", for programs.
[[nodiscard]] std::string gravity_key(care::Gravity gravity);

}  // namespace sparewell::desk
