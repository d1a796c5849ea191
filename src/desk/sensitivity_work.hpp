/// Changes to what is known of sensitivities and substances: each examines everyone anew and tells
/// who is newly affected. All write into a unit of work that the caller opens and commits; a
/// refusal writes nothing. All throw store::StoreFailure.
#pragma once

#include <string>
#include <vector>

#include "care/examination.hpp"
#include "clinic/refusal.hpp"
#include "store/port.hpp"

namespace sparewell::desk {

struct Reexamined {
  std::string done;  ///< what was changed, as a sentence
  int patients = 0;  ///< of whom a sensitivity is recorded, all of them examined
  int parts = 0;     ///< pairs of part and substance looked at
  std::vector<care::Worsened> newly;
};

/// The records that an examination reads.
[[nodiscard]] Clinic read_for_examination(const store::Snapshot& snapshot);

/// Replaces what an item declares. Refuses an unknown item, and what is declared already.
[[nodiscard]] Expected<Reexamined> set_constituents(store::UnitOfWork& work, const ItemCode& item,
                                                    const std::vector<std::string>& constituents,
                                                    Date today);

/// Records a sensitivity of a patient. Refuses an unknown patient, no substance, one of
/// `established_by` that is none of the known words, a day to come, and what is recorded already.
[[nodiscard]] Expected<Reexamined> note_sensitivity(store::UnitOfWork& work,
                                                    const Sensitivity& sensitivity, Date today);

/// Adds to the table of substances; a withdrawn row is taken up again. Refuses an empty substance
/// or source, a substance related to itself, and a row that the table has.
[[nodiscard]] Expected<Reexamined> add_relation(store::UnitOfWork& work, const SubstanceRow& row,
                                                Date today);

/// Withdraws a row that the clinic added. Refuses what it did not add.
[[nodiscard]] Expected<Reexamined> withdraw_relation(store::UnitOfWork& work,
                                                     const SubstanceRow& row, Date today);

/// How a sensitivity can have been established.
[[nodiscard]] const std::vector<std::string>& ways_to_establish();

}  // namespace sparewell::desk
