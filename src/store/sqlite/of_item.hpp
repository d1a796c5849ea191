/// Records of one item, patient or order, found by their indexes. None when there is no such item.
#pragma once

#include <optional>
#include <vector>

#include "store/port.hpp"
#include "store/sqlite/session.hpp"

namespace sparewell::store::sqlite {

[[nodiscard]] std::optional<Row<Item>> find_item(Session& session, const ItemCode& code);
[[nodiscard]] std::optional<Row<Patient>> find_patient(Session& session, const PatientRef& ref);
[[nodiscard]] std::vector<Row<Unit>> find_units(Session& session, const ItemCode& item);
[[nodiscard]] std::vector<Row<OrderLine>> find_order_lines(Session& session, const ItemCode& item);
[[nodiscard]] std::vector<Row<OrderLine>> find_lines_of_order(Session& session,
                                                              const std::string& order_ref);

}  // namespace sparewell::store::sqlite
