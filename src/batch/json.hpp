/// How the program's values are written as JSON. Key order is kept as written.
#pragma once

#include <optional>

#include <nlohmann/json.hpp>

#include "clinic/date.hpp"
#include "clinic/money.hpp"

namespace sparewell::batch {

using Json = nlohmann::ordered_json;

/// "YYYY-MM-DD".
inline Json json_of(Date date) { return iso_text(date); }
/// null when there is no date.
inline Json json_of(const std::optional<Date>& date) {
  return date ? json_of(*date) : Json(nullptr);
}
/// In whole currency units, for example 12.5; null when not known.
inline Json json_of(const std::optional<Money>& money) {
  return money ? Json(money->major()) : Json(nullptr);
}

/// Prints one JSON document and a line break to standard output.
void print(const Json& document);

}  // namespace sparewell::batch
