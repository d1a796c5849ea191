/// What the socks that a patient was given say about the limb.
#pragma once

#include <optional>
#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::care {

/// The ply of a sock by its description: a whole number from 1 to 20 before the word "ply", with or
/// without a space or a hyphen between them, in any letter case ("3 ply", "5-ply", "1PLY"). Empty
/// for another kind of part, where there is no such number, or where several differ.
[[nodiscard]] std::optional<int> ply_of(const Item& item);

/// The socks handed out in the last six months carry more plies on average than those before. Plies
/// of socks worn one over the other do not sum (Prosthet Orthot Int, "Amputee socks", year from
/// memory: 0.7, 1.2 and 1.5 mm for 1, 3 and 5 ply under load), so that nothing but the mean of
/// single socks is compared.
struct SockSign {
  double plies_before = 0;
  double plies_lately = 0;
  int socks_before = 0;
  int socks_lately = 0;
};

/// From so much more on average on it is a sign (our choice).
inline constexpr double telling_plies = 0.5;

/// Empty where it is none, or where two socks of known ply are missing in either time.
[[nodiscard]] std::optional<SockSign> sock_sign(const std::vector<const Unit*>& units_of_side,
                                                const ClinicIndex& index, Date day);

}  // namespace sparewell::care
