/// What holds a patient's limbs on: the suspension chain of each side, in words and figures.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "desk/day.hpp"
#include "desk/life_strip.hpp"
#include "desk/patient_findings.hpp"

namespace sparewell::desk {

/// Where a part has its work, in the order of the chain; socks hold nothing and come after it.
enum class ChainPlace { interface, sleeve, pin, lock, valve, pump, sock, not_known };

/// How one thing about a part stands. What is not known is never `good`.
enum class Standing { good, told, not_known, look, stops };

struct ChainVerdict {
  Standing standing = Standing::not_known;
  std::string words;  ///< a few: "fits", "conflict: mineral oil"
};

/// A unit in use, or a function that nothing does.
struct ChainRow {
  std::string id;                   ///< position in Clinic::units; "missing left valve"
  std::optional<std::size_t> unit;  ///< the same as a number; empty where a part is missing
  ChainPlace place = ChainPlace::not_known;
  bool further = false;  ///< another unit does the same: a spare, or one that alternates
  std::string title;     ///< "Locking liner, LN01-28"
  std::string facts;     ///< "silicone, size 28"
  std::string dates;     ///< "issued 3 Mar 2026, worn always"
  std::vector<ChainVerdict> verdicts;  ///< the gravest first
  std::optional<StripEntry> life;
  std::string words;  ///< all of it in sentences

  [[nodiscard]] bool missing() const { return !unit; }
};

struct SideChain {
  Side side = Side::left;
  std::optional<Prosthesis> prosthesis;
  std::string held_by;  ///< "Transtibial, pin suspension"
  std::vector<ChainRow> rows;
};

/// The id of the row of a missing function.
[[nodiscard]] std::string missing_id(const PatientFinding& finding);

/// Left before right; only sides with a prosthesis or a part in use. `findings` are those of the
/// patient.
[[nodiscard]] std::vector<SideChain> limb_chains(const Day& day, const PatientRef& patient,
                                                 const std::vector<PatientFinding>& findings);

}  // namespace sparewell::desk
