/// The sheets of paper that documents are written for.
#pragma once

namespace sparewell::exchange {

enum class PaperSize { a4, letter };

}  // namespace sparewell::exchange
