/// The invented catalogue: models of parts, each in one or more sizes, and who sells them.
#pragma once

#include <vector>

#include "clinic/item.hpp"
#include "clinic/supplier.hpp"

namespace sparewell::sample {

/// In the order of the table in catalogue.cpp.
enum class ModelId {
  locking_silicone,
  locking_gel,
  locking_urethane,
  cushion_gel,
  cushion_urethane,
  seal_silicone,
  thigh_locking_silicone,
  thigh_seal_silicone,
  thigh_cushion_gel,
  arm_locking_silicone,
  sleeve_neoprene,
  sleeve_gel,
  sleeve_silicone,
  lock_m10,
  lanyard_m10,
  lock_m8,
  pin_m10,
  pin_m10_long,
  pin_m8,
  valve_plain,
  valve_metal,
  pump_electric,
  pump_mechanical,
  sock_one_ply,
  sock_three_ply,
  sock_five_ply,
  thigh_sock_three_ply,
  arm_sock
};

struct Model {
  std::vector<std::size_t> items;  ///< positions in Catalogue::items, smallest size first
};

struct Catalogue {
  std::vector<Supplier> suppliers;
  std::vector<Item> items;
  std::vector<Model> models;

  /// The size of a model for a circumference measured where the model is sized; the nearest one
  /// when none fits.
  [[nodiscard]] std::size_t fitting(ModelId model, double circumference_cm) const;
  [[nodiscard]] const Item& first_of(ModelId model) const;
};

[[nodiscard]] Catalogue make_catalogue();

}  // namespace sparewell::sample
