#include "people.hpp"

namespace sparewell::sample {
namespace {

bool is_arm(Level level) {
  return level == Level::transradial || level == Level::transhumeral;
}

bool is_thigh(Level level) {
  return level == Level::transfemoral || level == Level::knee_disarticulation ||
         level == Level::other;
}

ModelId locking_liner(Level level, Material material) {
  if (is_arm(level)) return ModelId::arm_locking_silicone;
  if (is_thigh(level)) return ModelId::thigh_locking_silicone;
  if (material == Material::mineral_oil_gel) return ModelId::locking_gel;
  return material == Material::urethane ? ModelId::locking_urethane : ModelId::locking_silicone;
}

ModelId cushion_liner(Level level, Material material) {
  if (is_thigh(level)) return ModelId::thigh_cushion_gel;
  return material == Material::urethane ? ModelId::cushion_urethane : ModelId::cushion_gel;
}

ModelId sleeve(Material liner_material, Random& random) {
  if (liner_material == Material::silicone) return ModelId::sleeve_silicone;
  return random.chance(0.6) ? ModelId::sleeve_neoprene : ModelId::sleeve_gel;
}

ModelId valve(Random& random) {
  return random.chance(0.75) ? ModelId::valve_plain : ModelId::valve_metal;
}

ModelId socks(Level level, Random& random) {
  if (is_arm(level)) return ModelId::arm_sock;
  if (is_thigh(level)) return ModelId::thigh_sock_three_ply;
  const std::size_t ply = random.weighted({0.3, 0.5, 0.2});
  return ply == 0   ? ModelId::sock_one_ply
         : ply == 1 ? ModelId::sock_three_ply
                    : ModelId::sock_five_ply;
}

void add_sleeve_chain(std::vector<ModelId>& chain, Level level, Material material, Random& random) {
  chain.push_back(cushion_liner(level, material));
  chain.push_back(sleeve(material, random));
}

void add_suction_chain(std::vector<ModelId>& chain, Level level, Material material,
                       Random& random) {
  if (is_thigh(level)) {
    chain.push_back(ModelId::thigh_seal_silicone);
  } else if (material == Material::silicone) {
    chain.push_back(ModelId::seal_silicone);
  } else {
    add_sleeve_chain(chain, level, material, random);
  }
  chain.push_back(valve(random));
}

void add_pin_chain(std::vector<ModelId>& chain, Level level, Material material, Random& random) {
  chain.push_back(locking_liner(level, material));
  chain.push_back(is_arm(level) ? ModelId::lock_m8 : ModelId::lock_m10);
  if (is_arm(level)) {
    chain.push_back(ModelId::pin_m8);
  } else {
    chain.push_back(random.chance(0.8) ? ModelId::pin_m10 : ModelId::pin_m10_long);
  }
}

}  // namespace

std::vector<ModelId> chain_of(Level level, Suspension suspension, Material liner_material,
                              Random& random) {
  std::vector<ModelId> chain;
  switch (suspension) {
    case Suspension::pin:
      add_pin_chain(chain, level, liner_material, random);
      break;
    case Suspension::lanyard:
      chain.push_back(locking_liner(level, liner_material));
      chain.push_back(ModelId::lanyard_m10);
      break;
    case Suspension::sleeve:
      add_sleeve_chain(chain, level, liner_material, random);
      break;
    case Suspension::suction:
      add_suction_chain(chain, level, liner_material, random);
      break;
    case Suspension::vacuum:
      add_sleeve_chain(chain, level, liner_material, random);
      chain.push_back(valve(random));
      chain.push_back(random.chance(0.5) ? ModelId::pump_electric : ModelId::pump_mechanical);
      break;
    case Suspension::anatomical:
      if (!is_arm(level)) chain.push_back(cushion_liner(level, liner_material));
      break;
    case Suspension::belt:
      if (!is_arm(level)) chain.push_back(cushion_liner(level, liner_material));
      break;
  }
  const bool sealed_to_skin = suspension == Suspension::suction &&
                              (is_thigh(level) || liner_material == Material::silicone);
  if (!sealed_to_skin) chain.push_back(socks(level, random));
  return chain;
}

}  // namespace sparewell::sample
