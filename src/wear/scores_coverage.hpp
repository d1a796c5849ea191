/// How often outcomes fell within the intervals that were forecast for them.
#pragma once

#include <cstddef>
#include <optional>
#include <span>

namespace sparewell::wear {

/// Where one outcome lay in its forecast (probability integral transform): the chance that had been
/// given to the end having come by then. Uniform from 0 to 1 when forecasts are right.
struct Placement {
  double chance = 0;       ///< 0 to 1
  bool worn_out = false;   ///< otherwise the life went on past `chance`, how far is not known
  std::size_t person = 0;  ///< outcomes of one person need not be independent
};

/// Part of the outcomes within the central interval of a level, with a 95 % interval for that part.
struct Coverage {
  double share = 0;
  double low = 0;
  double high = 0;
};

/// Share of outcomes within the central `level` of their forecasts, 0 < level < 1; nothing when
/// there are no outcomes.
///
/// A life not ended at u_c lies somewhere in (u_c, 1). It is spread over the places where later
/// outcomes lie (product-limit estimator of the placements), and uniformly, as forecast, beyond the
/// last of all, where nothing is known. Spreading it uniformly at once would count the forecast as
/// its own witness and pull every share towards its level. The variance is the infinitesimal
/// jackknife of that estimator summed over persons (without censoring and with one outcome a person
/// it is the binomial one); the interval is Wilson's with the number of outcomes that this variance
/// is worth, and at its ends the part of which nothing is known counts as outside or inside.
/// Formulas from memory (Kaplan and Meier 1958; Wilson 1927; sandwich of clustered data).
[[nodiscard]] std::optional<Coverage> central_coverage(std::span<const Placement> placements,
                                                       double level);

}  // namespace sparewell::wear
