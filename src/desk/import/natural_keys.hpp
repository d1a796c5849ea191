/// What makes two rows of a file, or a row and a stored record, the same one.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>

#include "clinic/clinic.hpp"

namespace sparewell::desk {

/// The parts of the natural keys that the store's port names, without the copy number, joined by a
/// character that no imported name may hold.
[[nodiscard]] std::string natural_key(const Supplier& supplier);
[[nodiscard]] std::string natural_key(const Item& item);
[[nodiscard]] std::string natural_key(const Patient& patient);
[[nodiscard]] std::string natural_key(const Prosthesis& prosthesis);
[[nodiscard]] std::string natural_key(const Usage& usage);
[[nodiscard]] std::string natural_key(const Sensitivity& sensitivity);
[[nodiscard]] std::string natural_key(const Measurement& measurement);
[[nodiscard]] std::string natural_key(const Reaction& reaction);
[[nodiscard]] std::string natural_key(const Unit& unit);
[[nodiscard]] std::string natural_key(const OrderLine& line);
[[nodiscard]] std::string natural_key(const ClaimLine& line);
[[nodiscard]] std::string natural_key(const InvoiceLine& line);
[[nodiscard]] std::string natural_key(const BillingCode& code);
[[nodiscard]] std::string natural_key(const PayerRule& rule);
[[nodiscard]] std::string natural_key(const PartPaper& paper);
/// A lot at a place.
[[nodiscard]] std::string stock_key(const Lot& lot, std::string_view place);

/// Joins parts of a key.
[[nodiscard]] std::string joined_key(std::initializer_list<std::string_view> parts);

}  // namespace sparewell::desk
