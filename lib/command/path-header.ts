/** In which header our server tells the pages what address was asked for; whatever came under that name is overwritten. */
export const PATH_HEADER = 'x-fettleyard-path'
