/// The table behind the invented catalogue: one row a model.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "clinic/words.hpp"

namespace sparewell::sample {

/// `count` sizes, each `step_cm` wide, measured `at_cm` above the distal end.
struct Sizes {
  int count = 1;
  double first_cm = 0;
  double step_cm = 0;
  double at_cm = 4;
  std::vector<std::string> labels = {};  ///< empty: named after the smallest circumference
};

struct Break {
  int from;
  std::int64_t unit_cost;
};

struct ModelRow {
  std::string code;
  std::string description;
  Kind kind = Kind::liner;
  Attachment attachment = Attachment::none;
  Material material = Material::other;
  std::vector<std::string> constituents;
  std::string billing_code;
  std::size_t supplier = 0;
  std::int64_t unit_cost = 0;  ///< in cents of the supplier's currency
  Sizes sizes;
  std::string thread;
  int lead_days = 0;        ///< 0: not quoted
  int shelf_life_days = 0;  ///< 0: none
  int pack_size = 1;
  int min_order = 1;
  std::vector<Break> price_breaks = {};
  bool stocked = true;
  bool has_gtin = true;
};

/// In the order of ModelId.
[[nodiscard]] const std::vector<ModelRow>& model_table();

}  // namespace sparewell::sample
