#include "model_table.hpp"

namespace sparewell::sample {
namespace {

using K = Kind;
using A = Attachment;
using M = Material;

// clang-format off
const std::vector<std::string> silicone{"silicone elastomer", "platinum catalyst", "polyamide fabric"};
const std::vector<std::string> gel{"styrenic block copolymer", "mineral oil", "polyamide fabric"};
const std::vector<std::string> urethane{"polyurethane", "aliphatic isocyanate"};
const std::vector<std::string> neoprene{"polychloroprene", "dialkyl thioureas", "carbamates"};
const std::vector<std::string> steel{"stainless steel", "nickel"};
const std::vector<std::string> wool{"wool", "polyamide"};
const std::vector<std::string> cotton{"cotton", "elastane"};

const Sizes shank{9, 18, 2, 4, {}};
const Sizes thigh{9, 30, 2, 4, {}};
const Sizes arm{4, 15, 2.5, 4, {}};
const Sizes sleeve{6, 22, 4, 20, {"XS", "S", "M", "L", "XL", "XXL"}};
const Sizes shank_sock{3, 16, 7, 4, {"S", "M", "L"}};
const Sizes thigh_sock{3, 28, 7, 4, {"S", "M", "L"}};
const Sizes arm_sock{2, 14, 6, 4, {"S", "M"}};
const Sizes one{};

std::vector<ModelRow> liners() {
  return {
      {"LS10", "Locking liner, silicone, distal thread M10", K::liner, A::locking, M::silicone,
       silicone, "L5673", 0, 41200, shank, "M10", 6, 1095, 1, 1, {{5, 39600}}},
      {"LG10", "Locking liner, mineral-oil gel, 6 mm, thread M10", K::liner, A::locking,
       M::mineral_oil_gel, gel, "L5673", 1, 36800, shank, "M10", 8, 730},
      {"LU10", "Locking liner, urethane, thread M10", K::liner, A::locking, M::urethane,
       urethane, "L5673", 2, 49800, shank, "M10", 19, 1095, 1, 1, {}, false},
      {"CG06", "Cushion liner, mineral-oil gel, 6 mm", K::liner, A::cushion, M::mineral_oil_gel,
       gel, "L5679", 1, 29900, shank, "", 8, 730, 1, 1, {{4, 28700}, {8, 27500}}},
      {"CU04", "Cushion liner, urethane, 4 mm", K::liner, A::cushion, M::urethane,
       urethane, "L5679", 2, 45500, shank, "", 19, 1095},
      {"SE05", "Liner with one seal, silicone", K::liner, A::seal, M::silicone,
       silicone, "L5679", 0, 56500, shank, "", 6, 1095},
      {"TL10", "Thigh locking liner, silicone, thread M10", K::liner, A::locking, M::silicone,
       silicone, "L5673", 0, 47800, thigh, "M10", 7, 1095},
      {"TS05", "Thigh liner with seal, silicone", K::liner, A::seal, M::silicone,
       silicone, "L5679", 0, 59900, thigh, "", 7, 1095},
      {"TC06", "Thigh cushion liner, mineral-oil gel", K::liner, A::cushion, M::mineral_oil_gel,
       gel, "L5679", 1, 33900, thigh, "", 9, 730, 1, 1, {}, false},
      {"AL08", "Arm locking liner, silicone, thread M8", K::liner, A::locking, M::silicone,
       {}, "", 0, 43900, arm, "M8", 12, 1095, 1, 1, {}, false, false},
  };
}

std::vector<ModelRow> sleeves_and_hardware() {
  return {
      {"SN03", "Suspension sleeve, neoprene", K::sleeve, A::none, M::neoprene,
       neoprene, "L5685", 1, 5900, sleeve, "", 8, 1460, 1, 2, {{6, 5500}}},
      {"SG04", "Suspension sleeve, \"soft cuff\", gel in fabric", K::sleeve, A::none,
       M::mineral_oil_gel, gel, "L5685", 1, 9800, sleeve, "", 8, 730},
      {"SS02", "Suspension sleeve, silicone", K::sleeve, A::none, M::silicone,
       silicone, "L5685", 0, 12900, sleeve, "", 6, 1095},
      {"LK10", "Shuttle lock, M10 pin", K::lock, A::none, M::metal,
       {"aluminium", "stainless steel"}, "L5671", 0, 18900, one, "M10", 6},
      {"LY10", "Lanyard set for thread M10", K::lock, A::none, M::other,
       {"polyamide cord"}, "L5671", 1, 8700, one, "M10", 10, 0, 1, 1, {}, false},
      {"LK08", "Small shuttle lock, M8 pin", K::lock, A::none, M::metal,
       {"titanium"}, "", 0, 21500, one, "M8", 12, 0, 1, 1, {}, false},
      {"PN10", "Pin, M10, 45 mm", K::pin, A::none, M::metal,
       steel, "L7510", 0, 1650, one, "M10", 6, 0, 5, 5},
      {"PX10", "Pin, M10, 65 mm", K::pin, A::none, M::metal,
       steel, "L7510", 0, 1890, one, "M10", 6, 0, 5, 5},
      {"PN08", "Pin, M8, 30 mm", K::pin, A::none, M::metal,
       {"titanium"}, "L7510", 0, 1980, one, "M8", 12},
      {"VP01", "One-way valve, push to release", K::valve, A::none, M::other,
       {}, "L7510", 1, 3400, one, "", 8, 1825, 2, 2},
      {"VM02", "One-way valve, metal body", K::valve, A::none, M::metal,
       {"brass", "nickel"}, "L7510", 2, 5200, one, "", 19, 1825, 1, 4, {{10, 4700}}},
      {"PE01", "Vacuum pump, electric", K::pump, A::none, M::other,
       {"polyamide"}, "L5781", 2, 138000, one, "", 0, 0, 1, 1, {}, false},
      {"PM02", "Vacuum pump, mechanical", K::pump, A::none, M::metal,
       {}, "L5781", 0, 74500, one, "", 14, 0, 1, 1, {}, false},
  };
}

std::vector<ModelRow> socks() {
  return {
      {"KS1", "Sock, 1 ply, below knee", K::sock, A::none, M::fabric,
       cotton, "L8470", 3, 940, shank_sock, "", 5, 0, 6, 12, {{36, 860}}},
      {"KS3", "Sock, 3 ply, below knee", K::sock, A::none, M::fabric,
       wool, "L8420", 3, 1480, shank_sock, "", 5, 0, 6, 12, {{36, 1390}, {72, 1320}}},
      {"KS5", "Sock, 5 ply, below knee", K::sock, A::none, M::fabric,
       wool, "L8420", 3, 1760, shank_sock, "", 5, 0, 6, 6},
      {"TS3", "Sock, 3 ply, above knee", K::sock, A::none, M::fabric,
       wool, "L8430", 3, 1990, thigh_sock, "", 5, 0, 6, 6},
      {"AS1", "Sock, arm", K::sock, A::none, M::fabric,
       cotton, "L8435", 3, 890, arm_sock, "", 5, 0, 6, 6, {}, true, false},
  };
}
// clang-format on

std::vector<ModelRow> joined() {
  std::vector<ModelRow> all = liners();
  for (auto& row : sleeves_and_hardware()) all.push_back(std::move(row));
  for (auto& row : socks()) all.push_back(std::move(row));
  return all;
}

}  // namespace

const std::vector<ModelRow>& model_table() {
  static const std::vector<ModelRow> table = joined();
  return table;
}

}  // namespace sparewell::sample
